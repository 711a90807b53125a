"""What drawings of single things share: a zooming view in mm that is painted in pixels, hatchings, words in boxes."""
