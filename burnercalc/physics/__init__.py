"""Formulas: plain functions of SI floats, each with its source and its outside check."""
