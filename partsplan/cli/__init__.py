"""The command line: options in, one use-case, one report, an exit code."""
