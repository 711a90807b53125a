"""Why a document has no plan, as few limits as clash, and single changes that help."""
