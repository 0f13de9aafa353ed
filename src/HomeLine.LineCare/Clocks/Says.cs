using System.Globalization;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.LineCare.Clocks;

/// <summary>Dates, amounts and names as the reasons print them.</summary>
internal static class Says
{
    private static readonly LocalDatePattern LongDay = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM uuuu");
    private static readonly LocalDatePattern ShortDay = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");

    private const int MinutesPerDay = 24 * 60;

    public static string Day(LocalDate day) => LongDay.Format(day);

    public static string Short(LocalDate day) => ShortDay.Format(day);

    /// <summary>A day as identifiers carry it.</summary>
    public static string Iso(LocalDate day) => LocalDatePattern.Iso.Format(day);

    public static string When(CareMoment moment, DateTimeZone zone) => moment.At is { } at
        ? $"{Short(moment.Date)} {Clock(at, zone)}"
        : Short(moment.Date);

    public static string Moment(Instant at, DateTimeZone zone) => $"{Short(at.InZone(zone).Date)} {Clock(at, zone)}";

    /// <summary>Hours and minutes on the wall.</summary>
    public static string Clock(Instant at, DateTimeZone zone)
    {
        var minutes = (int)((at - NodaConstants.UnixEpoch).Plus(Duration.FromSeconds(zone.GetUtcOffset(at).Seconds)).TotalMinutes % MinutesPerDay);
        if (minutes < 0) minutes += MinutesPerDay;
        return string.Create(5, minutes, static (text, m) =>
        {
            (text[0], text[1], text[2]) = (Digit(m / 600), Digit(m / 60 % 10), ':');
            (text[3], text[4]) = (Digit(m % 60 / 10), Digit(m % 10));
        });
    }

    private static char Digit(int digit) => (char)('0' + digit);

    public static string Amount(decimal value, string unit) =>
        value == 0 && unit == "days" ? "the same day"
        : string.Create(CultureInfo.InvariantCulture, $"{value:0.##} {(value == 1 && unit.EndsWith('s') ? unit[..^1] : unit)}");

    /// <summary>Who did it, only when it was not a nurse of the agency.</summary>
    public static string By(LineEvent entry) => entry.Performer switch
    {
        PerformerKind.Nurse => "",
        PerformerKind.Caregiver => $" by {(entry.PerformerName.Length > 0 ? entry.PerformerName : "a caregiver")}",
        _ => $" by {(entry.PerformerName.Length > 0 ? entry.PerformerName : "somebody outside the agency")}",
    };

    /// <summary>How far the date can be trusted, only when no nurse of the agency saw it.</summary>
    public static string Trust(Certainty certainty) => certainty switch
    {
        Certainty.SeenByOurNurse => "",
        Certainty.WrittenOnDressing => " (read off the dressing)",
        Certainty.DischargePaper => " (from the discharge paper)",
        Certainty.CaregiverByPhone => " (told by phone)",
        Certainty.Guess => " (a guess)",
        _ => throw new ArgumentOutOfRangeException(nameof(certainty), certainty, "No such certainty."),
    };

    /// <summary>Who set a rule, in a few words; the full source stands beside it.</summary>
    public static string SetBy(PolicyRule rule) => rule.Level == PolicyLevel.Agency
        ? $"agency policy from {Day(rule.EffectiveFrom)}"
        : rule.Standing switch
        {
            RuleStanding.Published => "published default",
            RuleStanding.PublishedSecondHand => "published default, second hand",
            RuleStanding.CommonPractice => "default from common practice",
            RuleStanding.FromMemory => "default from memory",
            RuleStanding.OwnDefault => "our own default",
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule.Standing, "No such standing."),
        };

    public static string Changed(DressingKind kind) => kind switch
    {
        DressingKind.Film => "Film changed",
        DressingKind.Gauze => "Gauze changed",
        DressingKind.GauzeUnderFilm => "Gauze under film changed",
        DressingKind.AntisepticFilm => "Antiseptic film changed",
        DressingKind.None => "No dressing changed",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such dressing."),
    };

    public static string FirstDressing(DressingKind kind) => kind switch
    {
        DressingKind.Film => "First dressing (film) put on",
        DressingKind.Gauze => "First dressing (gauze) put on",
        DressingKind.GauzeUnderFilm => "First dressing (gauze under film) put on",
        DressingKind.AntisepticFilm => "First dressing (antiseptic film) put on",
        DressingKind.None => "First dressing (no dressing) put on",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such dressing."),
    };

    public static string Missing(MissingDate why) => why switch
    {
        MissingDate.NeverRecorded => "nothing is recorded",
        MissingDate.Undated => "it was recorded without a date",
        MissingDate.Guess => "the date is a guess",
        MissingDate.HospitalStay => "a hospital stay came since the last recorded date",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "The date is known."),
    };
}
