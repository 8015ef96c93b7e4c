"""Floor 5: a job as events, their fold to a state, the journal, and the assessment of a state."""
