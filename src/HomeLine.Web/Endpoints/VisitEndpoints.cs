using HomeLine.Agency;
using HomeLine.Agency.Access;
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
        // The header cannot be sent by a page of another site.
        app.MapPost("/visits/draft-key", ([FromHeader(Name = "X-HomeLine")] string? sign, [FromBody] SealedDraft draft, HttpContext http, [FromServices] DraftKeys keys) =>
            sign == "draft" && keys.Open(Actors.From(http.User).UserId, draft.Seal) is { } key ? Results.Text(key) : Results.NotFound());
    }

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
