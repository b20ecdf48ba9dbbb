using Microsoft.AspNetCore.Http.HttpResults;
using PileController.Access;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Forecasts;
using PileController.Panel.Guard;
using PileController.Service;

namespace PileController.Panel.Commands;

/// <summary><c>POST /api/forecast</c>: hands over a forecast of the weather.</summary>
internal static class ForecastApi
{
    private const string Unnamed = "handed over";

    /// <summary>Adds the route.</summary>
    public static void Map(RouteGroupBuilder api) => api.MapPost("/forecast", TakeAsync).Needs(Scope.Forecast);

    private static async Task<IResult> TakeAsync(HttpRequest request, CommandInbox inbox, PanelFeed feed)
    {
        using StreamReader reader = new(request.Body);
        string text = await reader.ReadToEndAsync(request.HttpContext.RequestAborted);
        ForecastSeries series;
        try
        {
            series = ForecastText.Json(text, Unnamed);
        }
        catch (FormatException wrong)
        {
            return Wrong(wrong.Message);
        }

        if (feed.Latest is not { } news)
        {
            return Answers.Refused(StatusCodes.Status503ServiceUnavailable, "No tick yet", "The controller has not finished its first tick.");
        }

        Forecast forecast = new(series.FromUtcMilliseconds, series.OutsideC, series.SunWPerM2, series.Source);
        return forecast.Fault(news.Decision.At.UtcMilliseconds) is { } fault ? Wrong(fault) : inbox.Post(new TakeForecast(forecast), request.HttpContext);
    }

    private static ProblemHttpResult Wrong(string why) => Answers.Refused(StatusCodes.Status400BadRequest, "The forecast is wrong", why);
}
