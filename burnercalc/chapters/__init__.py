"""From a design to answers, checks, tables and charts, one chapter of the job a module."""
