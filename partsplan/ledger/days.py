"""Days that lie some days or months after another one."""

from datetime import date, timedelta

from partsplan.domain import Month


def days_after(day: date, days: int) -> date:
    """The day that many days later. [days]"""
    return day + timedelta(days)


def months_after(day: date, months: int) -> date:
    """The same day of a later month, or that month's last if it is shorter. [months]"""
    last = Month.of(day).plus(months).last_day
    return last.replace(day=min(day.day, last.day))
