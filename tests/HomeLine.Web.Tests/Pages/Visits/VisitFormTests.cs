using HomeLine.Agency.Visits;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.Web.Pages.Visits;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Visits;

/// <summary>A posted visit, field by field; each is named after what it belongs to, so that it fits whatever page it is sent to.</summary>
public sealed class VisitFormTests
{
    private const string Dressing = "P03|Dressing|P03-1||";
    private const string Labs = "P03|Labs|||P03-labs";

    private static VisitForm Posted(params (string Name, string[] Values)[] fields) =>
        new(new FormCollection(fields.ToDictionary(f => f.Name, f => new StringValues(f.Values))));

    private static readonly (string, string[])[] Whole =
    [
        ("submission", ["abc"]), ("day", ["2027-03-09"]), ("arrived", ["08:10"]), ("left", ["09:02"]), ("signs", ["none"]), ("do", ["check"]),
        ("item", [Dressing, Labs]), ($"item:{Dressing}", ["done"]), ($"item:{Dressing}:label", ["Dressing, PICC"]), ($"item:{Dressing}:planned", ["yes"]),
        ($"item:{Dressing}:dressing", ["Gauze"]), ($"item:{Dressing}:securement", ["on"]), ($"item:{Dressing}:at", ["08:30"]), ($"item:{Dressing}:by", ["spouse"]),
        ($"item:{Labs}", ["notdone"]), ($"item:{Labs}:planned", ["yes"]), ($"item:{Labs}:why", ["Refused"]), ($"item:{Labs}:text", ["afraid"]),
        ("line", ["P03-1"]), ("line:P03-1:looked", ["some"]), ("line:P03-1:found", ["Redness", "Warmth"]), ("line:P03-1:seal", ["EdgeLifted"]),
        ("line:P03-1:length", ["2,5"]), ("line:P03-1:unit", ["cm"]), ("line:P03-1:girth", ["31.5"]),
        ("lumen:P03-1", ["A", "B"]), ("lumen:P03-1:A:flushed", ["on"]), ("lumen:P03-1:A:return", ["Brisk"]), ("lumen:P03-1:B:stuck", ["on"]),
        ("draw", ["P03-labs"]), ("draw:P03-labs:from", ["P03-1/A"]), ("answer:key|1", ["because"]), ("device-now", ["1804590000000"]),
    ];

    [Fact]
    public void What_was_written_is_read_as_it_was_written()
    {
        VisitForm form = Posted(Whole);
        VisitEntry entry = form.Read(new PatientId("P03"), "visit 1");

        Assert.Empty(form.Faults);
        Assert.Equal("check", form.Do);
        Assert.Equal((new LocalDate(2027, 3, 9), new LocalTime(8, 10), new LocalTime(9, 2)), (entry.Day, entry.Arrived!.Value, entry.Left!.Value));
        Assert.True(entry.SignsAsked);
        ItemEntry dressing = entry.Items[0];
        Assert.Equal((ItemStanding.Done, DressingKind.Gauze, true, new LocalTime(8, 30), "spouse"), (dressing.Standing, dressing.Dressing!.Value, dressing.SecurementChanged, dressing.At!.Value, dressing.DoneBy));
        Assert.Equal((ItemStanding.NotDone, NotDoneReason.Refused, "afraid"), (entry.Items[1].Standing, entry.Items[1].Why!.Value, entry.Items[1].WhyText));
        LineEntry line = Assert.Single(entry.Lines);
        Assert.Equal(SiteFinding.Redness | SiteFinding.Warmth, line.Found);
        Assert.Equal(SealFinding.EdgeLifted, line.AsFound);
        Assert.Equal((2.5m, 31.5m), (line.OutsideLength!.Value, line.ArmGirthCm!.Value));
        Assert.Equal([new LumenEntry("A", true, BloodReturn.Brisk), new LumenEntry("B", false, BloodReturn.NotChecked, true)], line.Lumens);
        Assert.Empty(entry.Draws);
        Assert.Equal("because", entry.Answers["key|1"]);
        Assert.Equal(Instant.FromUnixTimeMilliseconds(1804590000000), entry.DeviceNow);
    }

    [Fact]
    public void A_draw_counts_when_its_item_is_done()
    {
        VisitEntry entry = Posted([.. Whole.Where(f => f.Item1 != $"item:{Labs}"), ($"item:{Labs}", ["done"])]).Read(new PatientId("P03"), null);
        Assert.Equal((new LineId("P03-1"), "A"), (entry.Draws[0].Line!.Value, entry.Draws[0].Lumen));
    }

    [Theory]
    [InlineData("arrived", "25:00", "arrived")]
    [InlineData("line:P03-1:length", "two", "line P03-1")]
    [InlineData("day", "09/03/2027", "arrived")]
    public void What_cannot_be_read_is_a_fault_at_its_field(string name, string typed, string field)
    {
        VisitForm form = Posted([.. Whole.Where(f => f.Item1 != name), (name, [typed])]);
        form.Read(new PatientId("P03"), null);
        Assert.Contains(form.Faults, f => f.Field == field && f.Sentence.Contains(typed, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_said_about_the_signs_is_not_no()
    {
        Assert.False(Posted([.. Whole.Where(f => f.Item1 != "signs")]).Read(new PatientId("P03"), null).SignsAsked);
        Assert.False(Posted([.. Whole.Where(f => f.Item1 != "signs"), ("signs", ["some"])]).Read(new PatientId("P03"), null).SignsAsked);
        Assert.Equal(["chills"], Posted([.. Whole.Where(f => f.Item1 != "signs"), ("signs", ["some"]), ("sign", ["chills"])]).Read(new PatientId("P03"), null).Signs);
    }

    [Fact]
    public void A_form_of_words_nobody_knows_is_read_as_nothing_and_never_breaks()
    {
        VisitEntry entry = Posted(("item", ["x|y"]), ("line", ["P03-1"]), ("line:P03-1:found", ["Nonsense"]), ("incident", ["9999"]), ("day", ["2027-03-09"])).Read(new PatientId("P03"), null);
        Assert.Empty(entry.Items);
        Assert.Equal(SiteFinding.None, entry.Lines[0].Found);
        Assert.Equal(Incident.None, entry.Incident);
    }
}
