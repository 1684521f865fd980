"""The words of the room Fire: its answers, checks, tables, charts and drawings."""

ANSWERS = ()
CHECKS = ()
TABLES = ()
CHARTS = ()
DRAWINGS = ()
