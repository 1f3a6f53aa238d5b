"""Lets ``python -m partsplan`` start the command line."""

from partsplan.cli.main import run

if __name__ == "__main__":
    run()
