"""The words of the room Make: its answers, checks, tables, charts and drawings."""

ANSWERS = ()
CHECKS = ()
TABLES = ()
CHARTS = ()
DRAWINGS = ()
