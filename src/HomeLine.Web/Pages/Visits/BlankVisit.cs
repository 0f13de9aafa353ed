using HomeLine.Agency.Visits;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Web.Pages.Visits;

/// <summary>The form before anything is typed, and with what was typed laid over it.</summary>
public static class BlankVisit
{
    /// <summary>So near to the planned start the hour of opening the form is taken for that of the arrival: our own default.</summary>
    private static readonly Period AtTheDoor = Period.FromHours(3);

    /// <param name="brief">What is planned and known.</param>
    /// <param name="amended">The record to be amended, whose words are laid over the form; empty for a first one.</param>
    /// <param name="submission">The form's own number.</param>
    public static VisitEntry Of(VisitBrief brief, VisitRecord? amended, string submission)
    {
        bool atTheDoor = brief.Planned is null || (brief.Now > brief.Starts - AtTheDoor && brief.Now < brief.Starts + AtTheDoor);
        var blank = new VisitEntry
        {
            Submission = submission,
            Patient = brief.Patient.Id,
            Visit = brief.Planned?.Id ?? amended?.Visit,
            Day = brief.Planned is null ? brief.Now.Date : brief.Starts.Date,
            Arrived = atTheDoor ? new LocalTime(brief.Now.Hour, brief.Now.Minute) : null,
            Items = [.. brief.Items.Concat(brief.Extras).Select(i => i.Item)],
            Lines = [.. brief.Lines.Select(l => new LineEntry { Line = l.Line.Id, Lumens = [.. l.Line.Lumens.Select(u => new LumenEntry(u.Label, false))] })],
        };
        return amended is null ? blank : With(blank, amended.Entry) with { Submission = submission, AmendedBecause = "", Answers = amended.Entry.Answers };
    }

    /// <summary>What was typed, laid over the form by key and line: a field the form did not have when it was sent stays blank, none is lost.</summary>
    public static VisitEntry With(VisitEntry blank, VisitEntry typed) => typed with
    {
        Items =
        [
            .. blank.Items.Select(own => typed.Items.FirstOrDefault(i => i.Key == own.Key) ?? own),
            .. typed.Items.Where(i => blank.Items.All(own => own.Key != i.Key)),
        ],
        Lines = [.. blank.Lines.Select(own => typed.Lines.FirstOrDefault(l => l.Line == own.Line) is { } line ? Lumens(line, own) : own)],
    };

    private static LineEntry Lumens(LineEntry typed, LineEntry own) =>
        typed with { Lumens = [.. own.Lumens.Select(l => typed.Lumens.FirstOrDefault(t => t.Label == l.Label) ?? l)] };

    /// <summary>What lies on the site goes on again, unless the nurse says otherwise.</summary>
    public static DressingKind UsualDressing(LineBrief? line) => line?.Covering is { } kind and not DressingKind.None ? kind : DressingKind.Film;
}
