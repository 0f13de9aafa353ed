using HomeLine.Agency.Roster;
using HomeLine.Agency.Tests.Mending;
using HomeLine.Agency.Today;
using HomeLine.Agency.Visits;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Tests.Today;

/// <summary>N2 on Tuesday: P59 from 09:46 for 75 min, then 15 min of charting and 23 min of road to P28, told from 11:39 for an hour. Worked out by hand.</summary>
public sealed class LateStartsTests
{
    [Fact]
    public void Who_left_ninety_minutes_late_comes_after_the_range_and_is_named_with_the_minutes()
    {
        LateStart late = Assert.Single(LateStarts.Of(At(12, 31), DemoAgency.Published, [Left(12, 31)]));

        Assert.Equal(("N2", 90, new LocalTime(11, 39), new LocalTime(13, 9)), (late.Nurse, late.MinutesBehind, late.Told, late.Expected));
    }

    [Fact]
    public void Who_is_still_inside_the_range_is_not() => Assert.Empty(LateStarts.Of(At(11, 46), DemoAgency.Published, [Left(11, 46)]));

    [Fact]
    public void Without_a_recorded_visit_nothing_is_projected() => Assert.Empty(LateStarts.Of(At(13, 0), DemoAgency.Published, []));

    private static AgencyAtHand At(int hour, int minute) => new(DemoAgency.Roster, DemoAgency.Files, DemoAgency.At(9, hour, minute));

    private static VisitRecord Left(int hour, int minute) => new()
    {
        Id = "V1",
        Submission = "s1",
        Patient = new PatientId("P59"),
        Visit = Tuesday.Visit(9, "P59"),
        Day = Tuesday.Day,
        ArrivedAt = DemoAgency.At(9, 9, 50),
        LeftAt = DemoAgency.At(9, hour, minute),
        Nurse = "N2",
        SignedName = "Rowan",
        SignedBy = "u-rowan",
        SignedAt = DemoAgency.At(9, hour, minute),
        Entry = new VisitEntry { Submission = "s1", Patient = new PatientId("P59"), Day = Tuesday.Day },
    };
}
