"""What an arrangement must keep, judged in the owner's words and numbers, without any search."""
