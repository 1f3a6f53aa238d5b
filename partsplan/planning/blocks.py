"""Jobs that depend on others only through money, hours, orders and tools."""

from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.sparse.csgraph import connected_components

from partsplan.planning.matrix import Matrix, Places


@dataclass(frozen=True)
class Block:
    """Columns with all rows that hold between them alone: much like one vehicle."""

    columns: Places
    rows: Places


def blocks(matrix: Matrix) -> tuple[Block, ...]:
    """The blocks of a program; every column is in one, common columns alone.

    Common rows and columns tie blocks together; a row with a common column is no
    block's own.
    """
    with_common = np.abs(matrix.rows) @ matrix.common_columns.astype(float) > 0
    inner_rows = np.flatnonzero(~matrix.common_rows & ~with_common)
    links = sparse.coo_array(matrix.rows[inner_rows])
    count, width = links.shape
    joined = sparse.coo_array(
        (np.ones(links.nnz, dtype=np.int8), (links.row, links.col + count)),
        shape=(count + width, count + width),
    )
    number, label = connected_components(joined, directed=False)
    return tuple(
        Block(columns=columns, rows=inner_rows[rows])
        for rows, columns in zip(
            _members(label[:count], number),
            _members(label[count:], number),
            strict=True,
        )
        if len(columns)
    )


def _members(label: Places, number: int) -> list[Places]:
    """The places that carry each label."""
    order = np.argsort(label, kind="stable")
    ends = np.cumsum(np.bincount(label, minlength=number))
    return np.split(order, ends[:-1])
