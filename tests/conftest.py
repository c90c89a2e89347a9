"""What every test may use: the marker that names the source of an external check."""

import pytest


def pytest_configure(config: pytest.Config) -> None:
    config.addinivalue_line(
        "markers", "source(kind, text): the authority outside the project that an external check is held to"
    )
