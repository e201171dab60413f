"""Documents: takes a proved lesson, gives pages: HTML from templates, and PDF from that same HTML."""
