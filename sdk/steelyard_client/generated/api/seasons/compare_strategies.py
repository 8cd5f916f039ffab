from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.comparison_request import ComparisonRequest
from ...models.comparison_response import ComparisonResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: ComparisonRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/seasons/comparison",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> ComparisonResponse | Problem | None:
    if response.status_code == 200:
        response_200 = ComparisonResponse.from_dict(response.json())

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
) -> Response[ComparisonResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: ComparisonRequest,
) -> Response[ComparisonResponse | Problem]:
    """Compare strategies for a season side by side

     Follow several strategies on the same body, and on the same draws of everything uncertain.

    For each: what it comes to for the expected body, the median and 80 % interval over the draws, and
    for each pair
    how probable it is that one beats the other on lean tissue gained, fat carried and days dieting. The
    draws follow
    the strategy, not a written plan: cuts start when the body fat that is seen says so, and intakes are
    set anew from
    the log. The draws are a fixed table: the same request gives the same bytes. Strategies that a rule
    refuses for
    this person are listed under `refused`; where every one is refused, the answer is that refusal as a
    422.

    Args:
        body (ComparisonRequest): A person, a horizon, limits and the strategies to compare.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[ComparisonResponse | Problem]
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
    body: ComparisonRequest,
) -> ComparisonResponse | Problem | None:
    """Compare strategies for a season side by side

     Follow several strategies on the same body, and on the same draws of everything uncertain.

    For each: what it comes to for the expected body, the median and 80 % interval over the draws, and
    for each pair
    how probable it is that one beats the other on lean tissue gained, fat carried and days dieting. The
    draws follow
    the strategy, not a written plan: cuts start when the body fat that is seen says so, and intakes are
    set anew from
    the log. The draws are a fixed table: the same request gives the same bytes. Strategies that a rule
    refuses for
    this person are listed under `refused`; where every one is refused, the answer is that refusal as a
    422.

    Args:
        body (ComparisonRequest): A person, a horizon, limits and the strategies to compare.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        ComparisonResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: ComparisonRequest,
) -> Response[ComparisonResponse | Problem]:
    """Compare strategies for a season side by side

     Follow several strategies on the same body, and on the same draws of everything uncertain.

    For each: what it comes to for the expected body, the median and 80 % interval over the draws, and
    for each pair
    how probable it is that one beats the other on lean tissue gained, fat carried and days dieting. The
    draws follow
    the strategy, not a written plan: cuts start when the body fat that is seen says so, and intakes are
    set anew from
    the log. The draws are a fixed table: the same request gives the same bytes. Strategies that a rule
    refuses for
    this person are listed under `refused`; where every one is refused, the answer is that refusal as a
    422.

    Args:
        body (ComparisonRequest): A person, a horizon, limits and the strategies to compare.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[ComparisonResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: ComparisonRequest,
) -> ComparisonResponse | Problem | None:
    """Compare strategies for a season side by side

     Follow several strategies on the same body, and on the same draws of everything uncertain.

    For each: what it comes to for the expected body, the median and 80 % interval over the draws, and
    for each pair
    how probable it is that one beats the other on lean tissue gained, fat carried and days dieting. The
    draws follow
    the strategy, not a written plan: cuts start when the body fat that is seen says so, and intakes are
    set anew from
    the log. The draws are a fixed table: the same request gives the same bytes. Strategies that a rule
    refuses for
    this person are listed under `refused`; where every one is refused, the answer is that refusal as a
    422.

    Args:
        body (ComparisonRequest): A person, a horizon, limits and the strategies to compare.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        ComparisonResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
