"""Checks of a deployed service, by its contract and by what must hold for anyone: the command ``steelyard-qa``.

Needs the extra: ``pip install 'steelyard-client[qa]'``.
"""
