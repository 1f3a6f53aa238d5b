"""A report as one page for a browser, a phone and paper."""

from partsplan.reports.html.report_html import report_html

__all__ = ["report_html"]
