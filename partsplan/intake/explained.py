"""What a column means to whoever fills it in."""

from partsplan.intake.schema import Column


def meaning(column: Column) -> str:
    """What stands in it, with its unit."""
    return column.meaning + (", in the row's own currency" if column.own_money else "")


def expected(column: Column, suffix: str = "") -> str:
    """What may stand in it; ``suffix`` ends the name of the table it refers to."""
    source = f", from {column.refers}{suffix}" if column.refers else ""
    return f"{column.kind.expects}{source}"


def blank(column: Column) -> str:
    """What a blank cell means."""
    return "not allowed" if column.needed else column.blank or column.default
