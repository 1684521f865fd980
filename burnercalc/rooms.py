"""The rooms of the job, in order: settings, answers, checks and the page's chapters carry these names."""

ROOMS = {"heat": "Heat", "face": "Face", "feed": "Air and gas", "make": "Make", "fire": "Fire"}
