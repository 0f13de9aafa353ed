using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.Sheets;
using HomeLine.LineCare.Lines;
using HomeLine.Paper;
using HomeLine.Paper.Layout;
using HomeLine.Web.Pages;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Endpoints;

/// <summary>
/// Printed sheets as downloads. Printing a care sheet replaces the last one, so both are form posts, never addresses;
/// a file's name holds an identifier and a number, never a name.
/// </summary>
public static class SheetEndpoints
{
    public static void MapSheets(this WebApplication app)
    {
        app.MapPost("/sheets/care", CareSheetAsync);
        app.MapPost("/sheets/day", DaySheetAsync);
    }

    private static async Task<IResult> CareSheetAsync(
        HttpContext http, [FromServices] AskSheets sheets,
        [FromForm] string patient, [FromForm] PaperSize paper, [FromForm] Edition edition, CancellationToken cancel)
    {
        Outcome<CareSheetContent> answer = await sheets.CareSheetAsync(Actors.From(http.User), new PatientId(patient), cancel);
        return answer.Succeeded
            ? Pdf(CareSheet.ToPdf(answer.Value, paper, edition), FormattableString.Invariant($"care-sheet-{patient}-{answer.Value.Number}.pdf"))
            : Refused(answer.Refusal!);
    }

    private static async Task<IResult> DaySheetAsync(
        HttpContext http, [FromServices] AskSheets sheets,
        [FromForm] string nurseDay, [FromForm] PaperSize paper, CancellationToken cancel)
    {
        if (nurseDay.Split('/') is not [var nurse, var iso] || !LocalDatePattern.Iso.Parse(iso).TryGetValue(default, out LocalDate day))
            return Refused(new Refusal("no-day", "Which nurse and day is not clear.", "Go back to the week and print from there."));
        Outcome<DaySheetContent> answer = await sheets.DaySheetAsync(Actors.From(http.User), nurse, day, cancel);
        return answer.Succeeded
            ? Pdf(DaySheet.ToPdf(answer.Value, paper), $"day-sheet-{nurse}-{iso}.pdf")
            : Refused(answer.Refusal!);
    }

    private static FileContentHttpResult Pdf(byte[] sheet, string name) => TypedResults.File(sheet, "application/pdf", name);

    private static RazorComponentResult<Refused> Refused(Refusal refusal) =>
        new(new Dictionary<string, object?> { [nameof(Pages.Refused.Refusal)] = refusal })
        {
            StatusCode = refusal.Code == "not-allowed" ? StatusCodes.Status403Forbidden : StatusCodes.Status409Conflict,
        };
}
