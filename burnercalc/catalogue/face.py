"""The words of the room Face: its answers, checks, tables, charts and drawings."""

ANSWERS = ()
CHECKS = ()
TABLES = ()
CHARTS = ()
DRAWINGS = ()
