"""The panel of checks: what was found about strength, stability and people, and what would mend it."""
