"""The tab “Re-plan”: what a re-plan would change, accepted whole or box by box, and the work that it asks for."""
