from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.briefing_reader import BriefingReader
from ...models.optimum_request import OptimumRequest
from ...models.problem import Problem
from ...types import UNSET, Response, Unset


def _get_kwargs(
    *,
    body: OptimumRequest,
    briefing: BriefingReader | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}
    if not isinstance(accept_language, Unset):
        headers["Accept-Language"] = accept_language

    params: dict[str, Any] = {}

    json_briefing: str | Unset = UNSET
    if not isinstance(briefing, Unset):
        json_briefing = briefing.value

    params["briefing"] = json_briefing

    params = {k: v for k, v in params.items() if v is not UNSET and v is not None}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/seasons/optimum/document",
        "params": params,
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Problem | str | None:
    if response.status_code == 200:
        response_200 = response.text
        return response_200

    if response.status_code == 400:
        response_400 = Problem.from_dict(response.json())

        return response_400

    if response.status_code == 401:
        response_401 = Problem.from_dict(response.json())

        return response_401

    if response.status_code == 403:
        response_403 = Problem.from_dict(response.json())

        return response_403

    if response.status_code == 406:
        response_406 = Problem.from_dict(response.json())

        return response_406

    if response.status_code == 408:
        response_408 = Problem.from_dict(response.json())

        return response_408

    if response.status_code == 413:
        response_413 = Problem.from_dict(response.json())

        return response_413

    if response.status_code == 415:
        response_415 = Problem.from_dict(response.json())

        return response_415

    if response.status_code == 422:
        response_422 = Problem.from_dict(response.json())

        return response_422

    if response.status_code == 429:
        response_429 = Problem.from_dict(response.json())

        return response_429

    if response.status_code == 500:
        response_500 = Problem.from_dict(response.json())

        return response_500

    if response.status_code == 503:
        response_503 = Problem.from_dict(response.json())

        return response_503

    if client.raise_on_unexpected_status:
        raise errors.UnexpectedStatus(response.status_code, response.content)
    else:
        return None


def _build_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Response[Problem | str]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
    briefing: BriefingReader | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Response[Problem | str]:
    """Write the best season as calendar, table, summary or briefing

     What `optimise_season` answers, as a document for people.

    The body is that of `optimise_season`, and so are the refusals. `Accept` chooses among a calendar
    (`text/calendar`, RFC
    5545: an all-day event for each phase and each change of intake; also where anything is accepted), a
    weekly table
    (`text/csv`, RFC 4180, units in the header), a summary to paste into a message (`text/markdown`),
    and a briefing to send
    or read aloud (`text/plain`; `briefing` says for whom): what to eat and expect at the start, week by
    week, at the end,
    and after it. `Accept-Language` chooses among the languages of `/v1/messages`; a table's columns and
    codes are the same
    in each. Every document carries the cautions. Of a plan, summary and briefing tell the other sizes
    and the activity of
    `include` whether or not they are asked for.

    Args:
        briefing (BriefingReader | Unset): Who is told, and how much.
        accept_language (str | Unset):
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | str]
    """

    kwargs = _get_kwargs(
        body=body,
        briefing=briefing,
        accept_language=accept_language,
    )

    response = client.get_httpx_client().request(
        **kwargs,
    )

    return _build_response(client=client, response=response)


def sync(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
    briefing: BriefingReader | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Problem | str | None:
    """Write the best season as calendar, table, summary or briefing

     What `optimise_season` answers, as a document for people.

    The body is that of `optimise_season`, and so are the refusals. `Accept` chooses among a calendar
    (`text/calendar`, RFC
    5545: an all-day event for each phase and each change of intake; also where anything is accepted), a
    weekly table
    (`text/csv`, RFC 4180, units in the header), a summary to paste into a message (`text/markdown`),
    and a briefing to send
    or read aloud (`text/plain`; `briefing` says for whom): what to eat and expect at the start, week by
    week, at the end,
    and after it. `Accept-Language` chooses among the languages of `/v1/messages`; a table's columns and
    codes are the same
    in each. Every document carries the cautions. Of a plan, summary and briefing tell the other sizes
    and the activity of
    `include` whether or not they are asked for.

    Args:
        briefing (BriefingReader | Unset): Who is told, and how much.
        accept_language (str | Unset):
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | str
    """

    return sync_detailed(
        client=client,
        body=body,
        briefing=briefing,
        accept_language=accept_language,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
    briefing: BriefingReader | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Response[Problem | str]:
    """Write the best season as calendar, table, summary or briefing

     What `optimise_season` answers, as a document for people.

    The body is that of `optimise_season`, and so are the refusals. `Accept` chooses among a calendar
    (`text/calendar`, RFC
    5545: an all-day event for each phase and each change of intake; also where anything is accepted), a
    weekly table
    (`text/csv`, RFC 4180, units in the header), a summary to paste into a message (`text/markdown`),
    and a briefing to send
    or read aloud (`text/plain`; `briefing` says for whom): what to eat and expect at the start, week by
    week, at the end,
    and after it. `Accept-Language` chooses among the languages of `/v1/messages`; a table's columns and
    codes are the same
    in each. Every document carries the cautions. Of a plan, summary and briefing tell the other sizes
    and the activity of
    `include` whether or not they are asked for.

    Args:
        briefing (BriefingReader | Unset): Who is told, and how much.
        accept_language (str | Unset):
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | str]
    """

    kwargs = _get_kwargs(
        body=body,
        briefing=briefing,
        accept_language=accept_language,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: OptimumRequest,
    briefing: BriefingReader | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Problem | str | None:
    """Write the best season as calendar, table, summary or briefing

     What `optimise_season` answers, as a document for people.

    The body is that of `optimise_season`, and so are the refusals. `Accept` chooses among a calendar
    (`text/calendar`, RFC
    5545: an all-day event for each phase and each change of intake; also where anything is accepted), a
    weekly table
    (`text/csv`, RFC 4180, units in the header), a summary to paste into a message (`text/markdown`),
    and a briefing to send
    or read aloud (`text/plain`; `briefing` says for whom): what to eat and expect at the start, week by
    week, at the end,
    and after it. `Accept-Language` chooses among the languages of `/v1/messages`; a table's columns and
    codes are the same
    in each. Every document carries the cautions. Of a plan, summary and briefing tell the other sizes
    and the activity of
    `include` whether or not they are asked for.

    Args:
        briefing (BriefingReader | Unset): Who is told, and how much.
        accept_language (str | Unset):
        body (OptimumRequest): A person, a horizon and limits: which strategy gains most lean
            tissue inside them?

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | str
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
            briefing=briefing,
            accept_language=accept_language,
        )
    ).parsed
