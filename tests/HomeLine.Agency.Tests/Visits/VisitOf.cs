using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Tests.Visits;

/// <summary>Invented visits of the demonstration week, written down as a nurse would: everything planned done, nothing found.</summary>
internal static class VisitOf
{
    public static readonly Actor Juniper = new("u-n1", "Juniper", [AgencyRole.Nurse], "N1");
    public static readonly Actor Linden = new("u-n5", "Linden", [AgencyRole.Nurse], "N5");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>The form of a planned visit with every item done at the hour given, every site looked at, every draw described.</summary>
    public static async Task<VisitEntry> DoneAsync(TestAgency agency, Actor nurse, string visit, int day, int hour, int minute = 0)
    {
        Outcome<VisitBrief> brief = await agency.Ask<AskVisit>().PlannedAsync(nurse, visit, Cancel);
        Assert.True(brief.Succeeded, brief.Refusal?.Sentence);
        return Done(brief.Value, visit, day, hour, minute);
    }

    public static VisitEntry Done(VisitBrief brief, string? visit, int day, int hour, int minute = 0) => new()
    {
        Submission = $"form {visit} {day} {hour} {minute}",
        Patient = brief.Patient.Id,
        Visit = visit,
        Day = new LocalDate(2027, 3, day),
        Arrived = new LocalTime(hour, minute),
        Left = new LocalTime(hour, minute).PlusMinutes(50),
        SignsAsked = true,
        Items =
        [
            .. brief.Items.Select(i => i.Item with
            {
                Standing = ItemStanding.Done,
                Dressing = i.Item.Item is CareItem.Dressing or CareItem.PortNeedle ? DressingKind.Film : null,
                SecurementChanged = i.Item.Item is CareItem.Dressing,
            }),
        ],
        Lines = [.. brief.Lines.Select(l => new LineEntry { Line = l.Line.Id, Looked = true, OutsideLength = l.LastLengthCm })],
        Draws = [.. brief.Draws.Where(d => d.IsPlanned).Select(d => new DrawEntry { Order = d.Order, DrawnAt = new LocalTime(hour, minute).PlusMinutes(10) })],
    };

    public static VisitEntry ButItem(this VisitEntry entry, CareItem item, Func<ItemEntry, ItemEntry> but) =>
        entry with { Items = [.. entry.Items.Select(i => i.Item == item ? but(i) : i)] };

    public static VisitEntry ButLine(this VisitEntry entry, Func<LineEntry, LineEntry> but) =>
        entry with { Lines = [but(entry.Lines[0]), .. entry.Lines.Skip(1)] };

    public static ItemEntry NotDone(this ItemEntry item, NotDoneReason why, string words = "") => item with { Standing = ItemStanding.NotDone, Why = why, WhyText = words };

    /// <summary>The same form with every open question answered.</summary>
    public static async Task<VisitEntry> AnsweredAsync(this VisitEntry entry, TestAgency agency, Actor nurse, string answer = "asked and so it is", string? amends = null)
    {
        VisitCheck check = (await agency.Ask<RecordVisit>().CheckAsync(nurse, entry, amends, Cancel)).Value;
        return entry with { Answers = check.Questions.ToImmutableDictionary(q => q.Key, _ => answer) };
    }
}
