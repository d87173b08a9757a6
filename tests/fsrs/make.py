"""Makes short.csv and long.csv, the reference for review times. It was run once; tests need no Python.

    pip install fsrs==3.1.0 && python make.py short > short.csv
    pip install fsrs==4.0.0 && python make.py long > long.csv

Both are FSRS-5 with the 19 default parameters that rs-fsrs 1.2.1 has too (compared below), retention 0.9,
longest interval 36500 days, no fuzz. Version 3.1.0 has the short steps of rs-fsrs with
`enable_short_term: true`; version 4.0.0 without learning and relearning steps does what rs-fsrs does with
`enable_short_term: false`, as long as reviews are a day or more apart.

A row: case, review in the case, days since the last review, rating (1 again, 2 hard, 3 good, 4 easy),
stability in days, difficulty, interval in days. The intervals of `long` are left empty where the reference
gives another rating of the same review the same or a longer one: rs-fsrs then lengthens intervals so that a
better rating always comes back later, which this version of the reference does not.
"""

import sys
from datetime import datetime, timedelta, timezone

import fsrs

W = (0.4072, 1.1829, 3.1262, 15.4722, 7.2102, 0.5316, 1.0651, 0.0234, 1.616, 0.1544, 1.0824, 1.9813,
     0.0953, 0.2975, 2.2042, 0.2407, 2.9466, 0.5034, 0.6567)

# Ratings, and days after which each review comes: none for when it is due.
CASES = [
    ([3, 3, 3, 3, 3, 3, 1, 1, 3, 3, 3, 3, 3], None),
    ([4, 3, 3, 2, 3, 4, 1, 3], None),
    ([1, 2, 3, 3, 4, 2, 2, 3], None),
    ([2, 2, 3, 1, 3, 3, 3], None),
    ([3, 3, 3, 3, 3], [0, 1, 1, 1, 1]),
    ([3, 3, 1, 3, 2, 4], [0, 2, 30, 1, 9, 200]),
    ([1, 1, 3, 3, 4], [0, 1, 3, 60, 20]),
]


def row(case, n, days, rating, card, interval):
    print(f"{case},{n},{days},{int(rating)},{card.stability:.6f},{card.difficulty:.6f},{interval}")


def short():
    scheduler = fsrs.FSRS()
    assert tuple(scheduler.p.w) == W and scheduler.p.request_retention == 0.9
    for case, (ratings, gaps) in enumerate(CASES):
        now = datetime(2022, 11, 29, 12, 30, tzinfo=timezone.utc)
        card = fsrs.Card()
        for n, rating in enumerate(ratings):
            last = card.last_review if n else now
            if n and gaps:
                now = last + timedelta(days=gaps[n])
            days = (now - last).days
            card, _ = scheduler.review_card(card, fsrs.Rating(rating), now)
            row(case, n, days, rating, card, card.scheduled_days)
            if not gaps:
                now = card.due


def long():
    scheduler = fsrs.Scheduler(learning_steps=(), relearning_steps=(), enable_fuzzing=False)
    assert tuple(scheduler.parameters) == W and scheduler.desired_retention == 0.9
    for case, (ratings, gaps) in enumerate(CASES):
        now = datetime(2022, 11, 29, 12, 30, tzinfo=timezone.utc)
        card = fsrs.Card()
        for n, rating in enumerate(ratings):
            last = card.last_review if n else now
            if n and gaps:
                now = last + timedelta(days=gaps[n])
            days = (now - last).days
            each = [scheduler.review_card(card, fsrs.Rating(r), now)[0] for r in (1, 2, 3, 4)]
            intervals = [(c.due - now).days for c in each]
            card = each[rating - 1]
            clear = all(a < b for a, b in zip(intervals, intervals[1:]))
            row(case, n, days, rating, card, intervals[rating - 1] if clear else "")
            if not gaps:
                now = card.due


print("case,review,days,rating,stability_days,difficulty,interval_days")
short() if sys.argv[1] == "short" else long()
