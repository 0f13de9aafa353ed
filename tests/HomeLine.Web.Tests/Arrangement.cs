using HomeLine.Agency.Due;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Web.Tests;

/// <summary>One invented patient, nurse and window, to be varied by a test.</summary>
internal static class Arrangement
{
    public static readonly LocalDate Monday = new(2027, 3, 8);

    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];

    /// <summary>A film dressing changed on Wednesday 3 March: due Monday 8 to Wednesday 10.</summary>
    public static DueWindow Film { get; } = new()
    {
        Item = CareItem.Dressing,
        Patient = new PatientId("P03"),
        Line = new LineId("P03-1"),
        Standing = WindowStanding.Running,
        Basis = ClockBasis.Date,
        Opens = At(Monday),
        Target = At(Monday.PlusDays(2)),
        LateFrom = At(Monday.PlusDays(3)),
        OpensOn = Monday,
        LastDay = Monday.PlusDays(2),
        Owner = PerformerKind.Nurse,
        Because = new WindowReason(
            new EventId("E-17"), new LocalDate(2027, 3, 3), "dressing.film.max", "7 days", PolicyLevel.Agency, "Policy 12, signed 2027-01-04",
            "Film changed Wednesday 3 March; at most 7 days.", ["Default dressing.film.max of 9 days: the agency's rule is stricter."]),
    };

    public static DueRow Row(Urgency urgency = Urgency.Open, string patient = "P03", string name = "Clover Zigzagby") => new(
        new PatientId(patient), name, "Dunmallow", "PICC, 2 lumens", "Dressing (film)", Film with { Patient = new PatientId(patient) }, urgency,
        "Mon 8 to Wed 10 March", "Wed 10 Mar 13:12, Juniper Brasslock");

    public static WeekVisit Visit(string id = "V1", string patient = "P03", int hour = 9, int minute = 0, int minutes = 60) => new()
    {
        Id = id,
        Patient = new PatientId(patient),
        Nurse = "N1",
        Day = Monday,
        Start = new LocalTime(hour, minute),
        Minutes = minutes,
        Care = [new VisitCare("k", "weekly bundle")],
    };

    public static BoardStop Stop(WeekVisit visit, string name = "Clover Zigzagby", bool isLate = false) => new(
        visit, name, "Dunmallow", false, 14, visit.Start.PlusMinutes(visit.Minutes), isLate, ["Open from Mon 8 Mar 00:00; late from Thu 11 Mar 00:00."])
    {
        ToldMinutes = 60,
    };

    public static NurseRow Nurse(params BoardStop[] stops) => new(
        "N1", "Juniper Brasslock", "RN",
        [new NurseDayCell(Monday, new LocalTime(8, 0), new LocalTime(16, 30), "", [.. stops], 30, stops.Sum(stop => stop.Visit.Minutes))]);

    public static Instant At(LocalDate day, int hour = 0, int minute = 0) =>
        day.At(new LocalTime(hour, minute)).InZoneLeniently(Zone).ToInstant();
}
