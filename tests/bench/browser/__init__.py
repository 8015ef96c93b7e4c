"""Reports opened in a real browser, by hand."""
