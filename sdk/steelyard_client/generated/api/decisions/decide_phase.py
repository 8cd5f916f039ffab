from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.decision_request import DecisionRequest
from ...models.decision_response import DecisionResponse
from ...models.problem import Problem
from ...types import Response


def _get_kwargs(
    *,
    body: DecisionRequest,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/decisions",
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> DecisionResponse | Problem | None:
    if response.status_code == 200:
        response_200 = DecisionResponse.from_dict(response.json())

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
) -> Response[DecisionResponse | Problem]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: DecisionRequest,
) -> Response[DecisionResponse | Problem]:
    """Decide which phase comes next

     Say which phase comes next and why, what the alternatives cost, and what would change the answer.

    A cut is weighed against not cutting over 26 weeks: lean tissue gained, less a price for weeks of
    dieting and for
    body fat over the line of the person's motive. From it follows the body fat at which a cut becomes
    due; under it
    the answer is "not yet". Rules come first: a cut under way or just over, an event, the guard rails.
    No deficit is
    recommended where a rail refuses it: the answer then is 200 with another phase and the reason. Body
    fat computed
    from height and weight never starts a cut. To whom no body fat may be spoken of, none is: `leanness`
    and the fat
    of the alternatives are null.

    Args:
        body (DecisionRequest): A person, what they want, and what they have done so far.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[DecisionResponse | Problem]
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
    body: DecisionRequest,
) -> DecisionResponse | Problem | None:
    """Decide which phase comes next

     Say which phase comes next and why, what the alternatives cost, and what would change the answer.

    A cut is weighed against not cutting over 26 weeks: lean tissue gained, less a price for weeks of
    dieting and for
    body fat over the line of the person's motive. From it follows the body fat at which a cut becomes
    due; under it
    the answer is "not yet". Rules come first: a cut under way or just over, an event, the guard rails.
    No deficit is
    recommended where a rail refuses it: the answer then is 200 with another phase and the reason. Body
    fat computed
    from height and weight never starts a cut. To whom no body fat may be spoken of, none is: `leanness`
    and the fat
    of the alternatives are null.

    Args:
        body (DecisionRequest): A person, what they want, and what they have done so far.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        DecisionResponse | Problem
    """

    return sync_detailed(
        client=client,
        body=body,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: DecisionRequest,
) -> Response[DecisionResponse | Problem]:
    """Decide which phase comes next

     Say which phase comes next and why, what the alternatives cost, and what would change the answer.

    A cut is weighed against not cutting over 26 weeks: lean tissue gained, less a price for weeks of
    dieting and for
    body fat over the line of the person's motive. From it follows the body fat at which a cut becomes
    due; under it
    the answer is "not yet". Rules come first: a cut under way or just over, an event, the guard rails.
    No deficit is
    recommended where a rail refuses it: the answer then is 200 with another phase and the reason. Body
    fat computed
    from height and weight never starts a cut. To whom no body fat may be spoken of, none is: `leanness`
    and the fat
    of the alternatives are null.

    Args:
        body (DecisionRequest): A person, what they want, and what they have done so far.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[DecisionResponse | Problem]
    """

    kwargs = _get_kwargs(
        body=body,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: DecisionRequest,
) -> DecisionResponse | Problem | None:
    """Decide which phase comes next

     Say which phase comes next and why, what the alternatives cost, and what would change the answer.

    A cut is weighed against not cutting over 26 weeks: lean tissue gained, less a price for weeks of
    dieting and for
    body fat over the line of the person's motive. From it follows the body fat at which a cut becomes
    due; under it
    the answer is "not yet". Rules come first: a cut under way or just over, an event, the guard rails.
    No deficit is
    recommended where a rail refuses it: the answer then is 200 with another phase and the reason. Body
    fat computed
    from height and weight never starts a cut. To whom no body fat may be spoken of, none is: `leanness`
    and the fat
    of the alternatives are null.

    Args:
        body (DecisionRequest): A person, what they want, and what they have done so far.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        DecisionResponse | Problem
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
        )
    ).parsed
