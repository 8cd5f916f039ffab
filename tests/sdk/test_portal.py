"""The example portal's page holds what the service answers now, written so that no text can leave its element."""

import json
import re

import httpx
import pytest
from examples.local_service import LocalService
from examples.portal.build import PAGE, answer_from, page_with
from steelyard_client import Steelyard


def test_the_page_is_up_to_date(live: LocalService) -> None:
    with Steelyard(*live, transport=httpx.HTTPTransport()) as client:
        answer = answer_from(client)
    page = PAGE.read_text(encoding="utf-8")
    assert page == page_with(answer, page), "run `make sdk`"


def test_no_text_ends_the_element() -> None:
    page = page_with({"text": "</script><b>&amp;"}, PAGE.read_text(encoding="utf-8"))
    assert page.count("</script>") == PAGE.read_text(encoding="utf-8").count("</script>")
    data = re.search(r'json">\n(.*)\n', page)
    assert data
    assert json.loads(data[1]) == {"text": "</script><b>&amp;"}


def test_a_page_without_a_card_is_refused() -> None:
    with pytest.raises(ValueError, match="one card"):
        page_with({}, "<p></p>")
