"""Drawings as data in millimetres, and the writers that put them on paper or in files."""
