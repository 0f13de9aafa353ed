using System.Globalization;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Dates, amounts and names as the reasons print them.</summary>
internal static class Says
{
    public static string Day(LocalDate day) => day.ToString("ddd d MMM uuuu", CultureInfo.InvariantCulture);

    public static string Short(LocalDate day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    public static string When(CareMoment moment, DateTimeZone zone) => moment.At is { } at
        ? $"{Short(moment.Date)} {At(at, zone)}"
        : Short(moment.Date);

    public static string Moment(Instant at, DateTimeZone zone) => $"{Short(at.InZone(zone).Date)} {At(at, zone)}";

    private static string At(Instant at, DateTimeZone zone) =>
        at.InZone(zone).TimeOfDay.ToString("HH:mm", CultureInfo.InvariantCulture);

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

    public static string Material(DressingKind kind) => kind switch
    {
        DressingKind.Film => "Film",
        DressingKind.Gauze => "Gauze",
        DressingKind.GauzeUnderFilm => "Gauze under film",
        DressingKind.AntisepticFilm => "Antiseptic film",
        DressingKind.None => "No dressing",
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
