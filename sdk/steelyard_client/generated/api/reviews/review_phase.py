from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.problem import Problem
from ...models.review_request import ReviewRequest
from ...models.review_response import ReviewResponse
from ...types import Response


def _get_kwargs(
    *,
    body: ReviewRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/reviews",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Problem | ReviewResponse | None:
    if response.status_code == 200:
        response_200 = ReviewResponse.from_dict(response.json())

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
) -> Response[Problem | ReviewResponse]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: ReviewRequest,
) -> Response[Problem | ReviewResponse]:
    """Review a phase against its plan

     Compare a phase with its plan, and say what to do about it.

    The verdict is about tissue, so that water does not count, and comes with the probabilities behind
    it. Before a
    fortnight it is `too_early`. A phase is changed little and seldom: two readings a week apart must
    agree, its end
    moves before its intake does, and a step is at most 200 kcal a day. Called on the next day it says
    the same. Where
    scale and log do not agree `question` asks what settles it. `weeks` is the forecast from today's
    body, and
    `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks
    will
    look like. A deficit that is still running needs screening answers.

    Args:
        body (ReviewRequest): A person as at the phase's start, the plan, and the log so far.

            A log that begins some weeks before the phase tells more: it shows what is usual.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | ReviewResponse]
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
    body: ReviewRequest,
) -> Problem | ReviewResponse | None:
    """Review a phase against its plan

     Compare a phase with its plan, and say what to do about it.

    The verdict is about tissue, so that water does not count, and comes with the probabilities behind
    it. Before a
    fortnight it is `too_early`. A phase is changed little and seldom: two readings a week apart must
    agree, its end
    moves before its intake does, and a step is at most 200 kcal a day. Called on the next day it says
    the same. Where
    scale and log do not agree `question` asks what settles it. `weeks` is the forecast from today's
    body, and
    `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks
    will
    look like. A deficit that is still running needs screening answers.

    Args:
        body (ReviewRequest): A person as at the phase's start, the plan, and the log so far.

            A log that begins some weeks before the phase tells more: it shows what is usual.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | ReviewResponse
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: ReviewRequest,
) -> Response[Problem | ReviewResponse]:
    """Review a phase against its plan

     Compare a phase with its plan, and say what to do about it.

    The verdict is about tissue, so that water does not count, and comes with the probabilities behind
    it. Before a
    fortnight it is `too_early`. A phase is changed little and seldom: two readings a week apart must
    agree, its end
    moves before its intake does, and a step is at most 200 kcal a day. Called on the next day it says
    the same. Where
    scale and log do not agree `question` asks what settles it. `weeks` is the forecast from today's
    body, and
    `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks
    will
    look like. A deficit that is still running needs screening answers.

    Args:
        body (ReviewRequest): A person as at the phase's start, the plan, and the log so far.

            A log that begins some weeks before the phase tells more: it shows what is usual.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | ReviewResponse]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: ReviewRequest,
) -> Problem | ReviewResponse | None:
    """Review a phase against its plan

     Compare a phase with its plan, and say what to do about it.

    The verdict is about tissue, so that water does not count, and comes with the probabilities behind
    it. Before a
    fortnight it is `too_early`. A phase is changed little and seldom: two readings a week apart must
    agree, its end
    moves before its intake does, and a step is at most 200 kcal a day. Called on the next day it says
    the same. Where
    scale and log do not agree `question` asks what settles it. `weeks` is the forecast from today's
    body, and
    `reasons` say why. Once it is over, `change` says what was lost, and `after` what the first weeks
    will
    look like. A deficit that is still running needs screening answers.

    Args:
        body (ReviewRequest): A person as at the phase's start, the plan, and the log so far.

            A log that begins some weeks before the phase tells more: it shows what is usual.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | ReviewResponse
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
