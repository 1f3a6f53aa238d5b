"""Reads a page of HTML into a tree, strictly: what is opened is closed in order."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = {"meta", "input", "br", "hr", "img", "link"}


@dataclass
class Node:
    """An element; its texts and elements in order."""

    tag: str
    attributes: dict[str, str | None]
    content: list["Node | str"] = field(default_factory=list)

    def all(self, *tags: str) -> Iterator["Node"]:
        """All elements of these tags below, in the order of the page; without, all."""
        for one in self.content:
            if isinstance(one, Node):
                if not tags or one.tag in tags:
                    yield one
                yield from one.all(*tags)

    def with_attribute(self, name: str) -> Iterator["Node"]:
        """All elements below that have the attribute."""
        return (one for one in self.all() if name in one.attributes)

    @property
    def text(self) -> str:
        """All text below, blanks joined."""
        return " ".join("".join(self._texts()).split())

    def _texts(self) -> Iterator[str]:
        for one in self.content:
            if isinstance(one, str):
                yield one
            else:
                yield from one._texts()


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open = [Node("page", {})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        assert len(names) == len(set(names)), f"{tag}: an attribute twice: {names}"
        node = Node(tag, dict(attrs))
        self.open[-1].content.append(node)
        if tag not in VOID:
            self.open.append(node)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].content.append(Node(tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        opened = self.open.pop()
        assert opened.tag == tag, f"</{tag}> where <{opened.tag}> is open"

    def handle_data(self, data: str) -> None:
        self.open[-1].content.append(data)


def read_page(text: str) -> Node:
    """The tree of a page; AssertionError where it is not well nested."""
    reader = _Reader()
    reader.feed(text)
    reader.close()
    (page,) = reader.open
    return page
