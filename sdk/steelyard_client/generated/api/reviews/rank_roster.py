from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.problem import Problem
from ...models.roster_request import RosterRequest
from ...models.roster_response import RosterResponse
from ...types import Response


def _get_kwargs(
    *,
    body: RosterRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/rosters",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Problem | RosterResponse | None:
    if response.status_code == 200:
        response_200 = RosterResponse.from_dict(response.json())

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
) -> Response[Problem | RosterResponse]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: RosterRequest,
) -> Response[Problem | RosterResponse]:
    """Put members in the order in which to look at them

     Order up to 500 members by the `attention` that their reviews ask for, as those reviews gave it.

    The highest level comes first, then who has waited and been silent longest. Days of silence are
    counted up to the
    roster's day, so that somebody who stopped logging moves up by themselves. With last week's
    attention as `before`
    the answer says what changed. Whose review was refused has no `attention`, and comes before all of
    them: the refusal
    says whom they should see. Of thousands, review in batches, make rosters of 500 and merge them by
    `priority`.

    Args:
        body (RosterRequest): Up to 500 members; of more, make several rosters and merge them by
            `priority`.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | RosterResponse]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = client.get_httpx_client().request(
        **kwargs,
    )

    return _build_response(client=client, response=response)


def sync(
    *,
    client: AuthenticatedClient,
    body: RosterRequest,
) -> Problem | RosterResponse | None:
    """Put members in the order in which to look at them

     Order up to 500 members by the `attention` that their reviews ask for, as those reviews gave it.

    The highest level comes first, then who has waited and been silent longest. Days of silence are
    counted up to the
    roster's day, so that somebody who stopped logging moves up by themselves. With last week's
    attention as `before`
    the answer says what changed. Whose review was refused has no `attention`, and comes before all of
    them: the refusal
    says whom they should see. Of thousands, review in batches, make rosters of 500 and merge them by
    `priority`.

    Args:
        body (RosterRequest): Up to 500 members; of more, make several rosters and merge them by
            `priority`.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | RosterResponse
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: RosterRequest,
) -> Response[Problem | RosterResponse]:
    """Put members in the order in which to look at them

     Order up to 500 members by the `attention` that their reviews ask for, as those reviews gave it.

    The highest level comes first, then who has waited and been silent longest. Days of silence are
    counted up to the
    roster's day, so that somebody who stopped logging moves up by themselves. With last week's
    attention as `before`
    the answer says what changed. Whose review was refused has no `attention`, and comes before all of
    them: the refusal
    says whom they should see. Of thousands, review in batches, make rosters of 500 and merge them by
    `priority`.

    Args:
        body (RosterRequest): Up to 500 members; of more, make several rosters and merge them by
            `priority`.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | RosterResponse]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: RosterRequest,
) -> Problem | RosterResponse | None:
    """Put members in the order in which to look at them

     Order up to 500 members by the `attention` that their reviews ask for, as those reviews gave it.

    The highest level comes first, then who has waited and been silent longest. Days of silence are
    counted up to the
    roster's day, so that somebody who stopped logging moves up by themselves. With last week's
    attention as `before`
    the answer says what changed. Whose review was refused has no `attention`, and comes before all of
    them: the refusal
    says whom they should see. Of thousands, review in batches, make rosters of 500 and merge them by
    `priority`.

    Args:
        body (RosterRequest): Up to 500 members; of more, make several rosters and merge them by
            `priority`.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | RosterResponse
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
