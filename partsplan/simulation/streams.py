"""Random numbers that depend on the seed and on names, and on nothing else."""

from hashlib import sha256

from numpy.random import PCG64, Generator, SeedSequence


def stream(seed: int, *names: str) -> Generator:
    """The stream of that name; each is independent of all others.

    A source draws the same numbers whatever else a garage holds, in whatever order.
    The names reach numpy's SeedSequence as their SHA-256.
    """
    digest = sha256("\0".join(names).encode()).digest()
    return Generator(PCG64(SeedSequence([seed, int.from_bytes(digest)])))
