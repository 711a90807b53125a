"""The search behind `cutting.packing.pack`: guillotine layouts of rectangles on boards of several sizes and costs."""
