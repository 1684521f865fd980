"""The words of the room Heat: its answers, checks, tables, charts and drawings."""

ANSWERS = ()
CHECKS = ()
TABLES = ()
CHARTS = ()
DRAWINGS = ()
