"""Tables over records that have ids: one Qt model for all of them, sorted and filtered on raw values."""
