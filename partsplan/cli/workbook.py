"""``partsplan workbook``"""

from datetime import date
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import GaragePath
from partsplan.cli.output import (
    json_option,
    layout,
    may_write_workbook,
    write,
    write_bytes,
)


@click.command(
    cls=Command,
    example="partsplan workbook my-garage.xlsx --from my-garage",
    short_help="Write a garage as a workbook, or a workbook as a folder.",
    no_args_is_help=True,
)
@click.argument("workbook", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "--from",
    "garage",
    metavar="GARAGE",
    type=GaragePath(),
    help="Write this garage into WORKBOOK, instead of one to be filled in.",
)
@click.option(
    "--to",
    "folder",
    metavar="FOLDER",
    type=click.Path(file_okay=False, path_type=Path),
    help="Write the garage in WORKBOOK into this folder.",
)
@click.option("--force", is_flag=True, help="Overwrite what is there.")
@json_option
def workbook(
    workbook: Path,
    garage: Path | None,
    folder: Path | None,
    force: bool,
    as_json: bool,
) -> None:
    """Write a garage to be filled in into WORKBOOK, an .xlsx file.

    It has a sheet "garage" of keys and values and one for each table, with choices for
    every closed list and a comment on every column. All commands take such a workbook
    where they take a folder.
    """
    if garage and folder:
        raise click.UsageError("--from and --to exclude each other")
    if folder:
        _to_folder(workbook, folder, force=force, as_json=as_json)
        return
    may_write_workbook(str(workbook), force=force, flag="WORKBOOK")
    from partsplan import reports, usecases
    from partsplan.domain import Month

    today = date.today()
    made = (
        usecases.as_workbook(garage)
        if garage
        else usecases.starter_workbook(Month(today.year, today.month))
    )
    write_bytes(made.content, str(workbook))
    name, width = str(workbook), layout()["width"]
    if as_json:
        write(reports.as_workbook_json(name, made.sheets, made.logbook))
    elif garage:
        told = made.sheets, str(garage), made.logbook
        write(reports.as_workbook_text(name, *told, width=width))
    else:
        write(reports.started_text(name, made.sheets, width=width))


def _to_folder(workbook: Path, folder: Path, *, force: bool, as_json: bool) -> None:
    from partsplan import reports, usecases

    made = usecases.as_folder(workbook, folder, force=force)
    told = made.files, made.left_out, made.logbook
    if as_json:
        write(reports.as_folder_json(str(folder), *told))
    else:
        look = layout()["width"]
        text = reports.as_folder_text(str(folder), str(workbook), *told, width=look)
        write(text)
