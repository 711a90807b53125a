"""Form fields, one widget a kind of value: shown, edited in place, refused beside the field, never losing a value."""
