from http import HTTPStatus
from typing import Any

import httpx

from ... import errors
from ...client import AuthenticatedClient, Client
from ...models.picture_width import PictureWidth
from ...models.problem import Problem
from ...models.theme import Theme
from ...models.trend_request import TrendRequest
from ...models.vega_lite_picture import VegaLitePicture
from ...types import UNSET, Response, Unset


def _get_kwargs(
    *,
    body: TrendRequest,
    theme: Theme | Unset = UNSET,
    width: PictureWidth | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> dict[str, Any]:
    headers: dict[str, Any] = {}
    if not isinstance(accept_language, Unset):
        headers["Accept-Language"] = accept_language

    params: dict[str, Any] = {}

    json_theme: str | Unset = UNSET
    if not isinstance(theme, Unset):
        json_theme = theme.value

    params["theme"] = json_theme

    json_width: str | Unset = UNSET
    if not isinstance(width, Unset):
        json_width = width.value

    params["width"] = json_width

    params = {k: v for k, v in params.items() if v is not UNSET and v is not None}

    _kwargs: dict[str, Any] = {
        "method": "post",
        "url": "/v1/trends/picture",
        "params": params,
    }

    _kwargs["json"] = body.to_dict()

    headers["Content-Type"] = "application/json"

    _kwargs["headers"] = headers
    return _kwargs


def _parse_response(
    *, client: AuthenticatedClient | Client, response: httpx.Response
) -> Problem | VegaLitePicture | None:
    if response.status_code == 200:
        response_200 = VegaLitePicture.from_dict(response.json())

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
) -> Response[Problem | VegaLitePicture]:
    return Response(
        status_code=HTTPStatus(response.status_code),
        content=response.content,
        headers=response.headers,
        parsed=_parse_response(client=client, response=response),
    )


def sync_detailed(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
    theme: Theme | Unset = UNSET,
    width: PictureWidth | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Response[Problem | VegaLitePicture]:
    """Draw what a log says

     What `read_trend` answers, as a picture with its text for those who do not see it.

    The body is that of `read_trend`, and so are the refusals. `Accept` chooses among `image/svg+xml`
    (also where
    anything is accepted), `image/png`, and the picture's Vega-Lite specification for those who draw it
    themselves.
    `Accept-Language` chooses among the languages of `/v1/messages`. Cautions are in each of them.

    Args:
        theme (Theme | Unset): The page a picture is for.
        width (PictureWidth | Unset): What a picture is to fit.
        accept_language (str | Unset):
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | VegaLitePicture]
    """

    kwargs = _get_kwargs(
        body=body,
        theme=theme,
        width=width,
        accept_language=accept_language,
    )

    response = client.get_httpx_client().request(
        **kwargs,
    )

    return _build_response(client=client, response=response)


def sync(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
    theme: Theme | Unset = UNSET,
    width: PictureWidth | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Problem | VegaLitePicture | None:
    """Draw what a log says

     What `read_trend` answers, as a picture with its text for those who do not see it.

    The body is that of `read_trend`, and so are the refusals. `Accept` chooses among `image/svg+xml`
    (also where
    anything is accepted), `image/png`, and the picture's Vega-Lite specification for those who draw it
    themselves.
    `Accept-Language` chooses among the languages of `/v1/messages`. Cautions are in each of them.

    Args:
        theme (Theme | Unset): The page a picture is for.
        width (PictureWidth | Unset): What a picture is to fit.
        accept_language (str | Unset):
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | VegaLitePicture
    """

    return sync_detailed(
        client=client,
        body=body,
        theme=theme,
        width=width,
        accept_language=accept_language,
    ).parsed


async def asyncio_detailed(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
    theme: Theme | Unset = UNSET,
    width: PictureWidth | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Response[Problem | VegaLitePicture]:
    """Draw what a log says

     What `read_trend` answers, as a picture with its text for those who do not see it.

    The body is that of `read_trend`, and so are the refusals. `Accept` chooses among `image/svg+xml`
    (also where
    anything is accepted), `image/png`, and the picture's Vega-Lite specification for those who draw it
    themselves.
    `Accept-Language` chooses among the languages of `/v1/messages`. Cautions are in each of them.

    Args:
        theme (Theme | Unset): The page a picture is for.
        width (PictureWidth | Unset): What a picture is to fit.
        accept_language (str | Unset):
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Response[Problem | VegaLitePicture]
    """

    kwargs = _get_kwargs(
        body=body,
        theme=theme,
        width=width,
        accept_language=accept_language,
    )

    response = await client.get_async_httpx_client().request(**kwargs)

    return _build_response(client=client, response=response)


async def asyncio(
    *,
    client: AuthenticatedClient,
    body: TrendRequest,
    theme: Theme | Unset = UNSET,
    width: PictureWidth | Unset = UNSET,
    accept_language: str | Unset = UNSET,
) -> Problem | VegaLitePicture | None:
    """Draw what a log says

     What `read_trend` answers, as a picture with its text for those who do not see it.

    The body is that of `read_trend`, and so are the refusals. `Accept` chooses among `image/svg+xml`
    (also where
    anything is accepted), `image/png`, and the picture's Vega-Lite specification for those who draw it
    themselves.
    `Accept-Language` chooses among the languages of `/v1/messages`. Cautions are in each of them.

    Args:
        theme (Theme | Unset): The page a picture is for.
        width (PictureWidth | Unset): What a picture is to fit.
        accept_language (str | Unset):
        body (TrendRequest): A log to read, and whose it is: the person as on the day read at.

            Body fat that was measured on an earlier day goes into the log's `measurements`, with its
            date: in the profile it
            counts as that of the last day.

    Raises:
        errors.UnexpectedStatus: If the server returns an undocumented status code and Client.raise_on_unexpected_status is True.
        httpx.TimeoutException: If the request takes longer than Client.timeout.

    Returns:
        Problem | VegaLitePicture
    """

    return (
        await asyncio_detailed(
            client=client,
            body=body,
            theme=theme,
            width=width,
            accept_language=accept_language,
        )
    ).parsed
