"""Money in whole minor units, read from and written as decimal text."""

import re
from dataclasses import dataclass
from fractions import Fraction

_FORM = re.compile(r"-?[0-9]{1,12}(?:\.([0-9]+))?")


@dataclass(frozen=True, slots=True)
class Currency:
    """A currency of ISO 4217; ``digits`` counts its minor digits."""

    code: str
    digits: int

    @property
    def unit(self) -> int:
        """Minor units in one whole unit."""
        return int(10**self.digits)

    def parse(self, text: str) -> int:
        """The sum that ``text`` names. [minor units]

        Raises
        ------
        ValueError
            If the text is not plain decimal, or has more decimals than the currency.
        """
        found = _FORM.fullmatch(text)
        if not found:
            raise ValueError(
                f'expected an amount like {self.format(1250)}, got "{text}"'
            )
        if len((found[1] or "").rstrip("0")) > self.digits:
            raise ValueError(
                f'expected at most {self.digits} decimals in {self.code}, got "{text}"'
            )
        return int(Fraction(text) * self.unit)

    def format(self, amount: int) -> str:
        """An amount of minor units as decimal text, without the currency's code."""
        sign, whole = "-" if amount < 0 else "", abs(amount)
        if self.digits == 0:
            return f"{sign}{whole}"
        return f"{sign}{whole // self.unit}.{whole % self.unit:0{self.digits}d}"
