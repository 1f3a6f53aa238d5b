"""A garage whose every text tries to break the page that shows it."""

from dataclasses import replace

from partsplan.domain import NoOption, Report, Skip
from tests.reports.html.made_reports import made_report
from tests.reports.made import GARAGE, PLAN

SCRIPT = "<script>document.title='owned'</script>"
LONG = "Pumpengehäusedichtring" * 40
TURNED = "\u202eturned round\u2066 שמש \u200f"
TEXTS = {
    "script": SCRIPT,
    "endings": "</style></title></svg></textarea>]]>--><!--",
    "quotes": "\"' onmouseover=\"document.title='owned'\" x='",
    "braces": "{{ 7 * 7 }}{% raw %}&lt;b&gt;&#x3c;",
    "image": "<img src=x onerror=\"document.title='owned'\">",
    "turned": TURNED,
    "long": LONG,
}


def hostile_report(text: str) -> Report:
    """A report in which that text stands wherever a text may stand."""
    garage = replace(
        GARAGE,
        name=f"garage {text}",
        vehicles=tuple(replace(one, name=f"car {text}") for one in GARAGE.vehicles),
        faults=tuple(
            replace(one, id=one.id + text, title=f"fault {text}")
            for one in GARAGE.faults
        ),
        options=tuple(
            replace(
                one,
                id=one.id + text,
                fixes=tuple(
                    replace(cure, fault=cure.fault + text) for cure in one.fixes
                ),
                part_no=f"part {text}",
                notes=text,
            )
            for one in GARAGE.options
        ),
        suppliers=tuple(replace(one, name=f"shop {text}") for one in GARAGE.suppliers),
        tools=tuple(replace(one, name=f"tool {text}") for one in GARAGE.tools),
        milestones=(),
        warnings=(f"warning {text}",),
        assumed=tuple(replace(one, value=text, source=text) for one in GARAGE.assumed),
    )
    jobs = tuple(
        replace(
            job,
            option=job.option + text,
            faults=tuple(fault + text for fault in job.faults),
        )
        for job in PLAN.jobs
    )
    orders = {name + text: month for name, month in PLAN.choices.orders.items()}
    plan = replace(PLAN, jobs=jobs, choices=replace(PLAN.choices, orders=orders))
    skips = (Skip(fault=f"hum{text}", reason=NoOption()),)
    return made_report(garage, plan, skips=skips, shortfalls=())
