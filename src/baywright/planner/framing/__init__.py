"""From a document to the distribution problem in numbers, and from its places back to an arrangement."""
