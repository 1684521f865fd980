"""The jobs of tasks.py stay within their taps and screens, on both phones."""

import pytest
from browser.tasks import PHONES, TASKS, play


@pytest.mark.parametrize("phone", PHONES)
@pytest.mark.parametrize("name", TASKS)
def test_a_job_takes_few_taps_and_little_scrolling(chromium, site, phone, name):
    taps, screens = play(chromium, site, phone, name)
    _, most_taps, most_screens, _ = TASKS[name]
    assert taps <= most_taps and screens <= most_screens
