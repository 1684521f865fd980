"""What all tests share: properties are never judged by a clock, and CI draws the same examples each time.

At a desk the examples are random, so that they go on finding things; what they find becomes an @example or a test.
"""

import os

from hypothesis import settings

settings.register_profile("desk", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "desk")
