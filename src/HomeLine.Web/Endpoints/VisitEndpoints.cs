using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Visits;
using HomeLine.Paper;
using HomeLine.Paper.Layout;
using HomeLine.Web.Pages;
using HomeLine.Web.Pages.Visits;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace HomeLine.Web.Endpoints;

/// <summary>What the visit pages ask beside their forms: the printed summary, and the key to a draft that waited on a device.</summary>
public static class VisitEndpoints
{
    public static void MapVisits(this WebApplication app)
    {
        app.MapPost("/visits/summary", SummaryAsync);
        app.MapPost("/my-day/sign", SignAsync);
        app.MapPost("/my-day/standing", StandingAsync).AllowAnonymous();
        // The header cannot be sent by a page of another site.
        app.MapPost("/visits/draft-key", ([FromHeader(Name = "X-HomeLine")] string? sign, [FromBody] SealedDraft draft, HttpContext http, [FromServices] DraftKeys keys) =>
            sign == "draft" && keys.Open(Actors.From(http.User).UserId, draft.Seal) is { } key ? Results.Text(key) : Words("No such draft.", StatusCodes.Status404NotFound));
    }

    /// <summary>Asked by a device that keeps a day, also when its session has ended: gone once the account may no longer see it. The seal says whose day it is.</summary>
    private static async Task<IResult> StandingAsync([FromHeader(Name = "X-HomeLine")] string? sign, [FromBody] SealedDraft day, [FromServices] DraftKeys keys, [FromServices] SessionStanding standing)
    {
        if (sign != "draft") return Results.BadRequest();
        DayOnDevice answer = keys.PersonOf(day.Seal) is { } person ? await standing.MayKeepDayAsync(person) : DayOnDevice.Over;
        return answer switch
        {
            DayOnDevice.Stays => Results.NoContent(),
            DayOnDevice.Locked => Words("The day may not stay here while the account is locked.", StatusCodes.Status423Locked),
            _ => Words("The day may not stay here.", StatusCodes.Status410Gone),
        };
    }

    /// <summary>Arrived at, or out again from, a home that asks for signs.</summary>
    private static async Task<IResult> SignAsync(HttpContext http, [FromServices] KeepCheckIn signs, [FromForm] string visit, [FromForm] string sign, CancellationToken cancel)
    {
        Outcome<CheckIn> answer = await signs.KeepAsync(Actors.From(http.User), visit, sign == "out", cancel);
        return answer.Succeeded
            ? Results.LocalRedirect("/my-day")
            : new RazorComponentResult<Refused>(new Dictionary<string, object?> { [nameof(Pages.Refused.Refusal)] = answer.Refusal }) { StatusCode = StatusCodes.Status409Conflict };
    }

    /// <summary>An answer for a script: with words of its own no page takes its place.</summary>
    private static IResult Words(string words, int status) => Results.Text(words, statusCode: status);

    private static async Task<IResult> SummaryAsync(
        HttpContext http, [FromServices] AskVisit visits, [FromForm] string record, [FromForm] SummaryReader reader, [FromForm] PaperSize paper, CancellationToken cancel)
    {
        Outcome<VisitSummaryContent> answer = await visits.SummaryAsync(Actors.From(http.User), record, reader, onPaper: true, cancel);
        if (answer.Succeeded)
            return TypedResults.File(VisitSummary.ToPdf(answer.Value, paper), "application/pdf", $"visit-{answer.Value.RecordId}-{(reader == SummaryReader.Patient ? "patient" : "prescriber")}.pdf");
        return new RazorComponentResult<Refused>(new Dictionary<string, object?> { [nameof(Refused.Refusal)] = answer.Refusal })
        {
            StatusCode = answer.Refusal!.Code == "not-allowed" ? StatusCodes.Status403Forbidden : StatusCodes.Status409Conflict,
        };
    }
}

/// <summary>What the device sends to have its draft opened.</summary>
public sealed record SealedDraft(string Seal);
