using Bunit;
using HomeLine.Agency.Orders;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.Web.Pages.Patient;
using HomeLine.Web.Parts;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Patient;

public sealed class FrequencyWeeksTests : BunitContext
{
    private static readonly LocalDate Sunday = new(2027, 3, 7);

    private static readonly CareOrder Order = new()
    {
        Id = "O1",
        Patient = new PatientId("P03"),
        Kind = OrderKind.VisitFrequency,
        StartsOn = Sunday,
        VisitsPerWeek = 1,
        AsNeededVisits = 3,
        AsNeededUsed = 1,
    };

    [Fact]
    public void A_week_says_how_many_were_made_and_ordered_and_what_follows()
    {
        var ledger = new FrequencyLedger(Order, [new FrequencyWeek(Sunday.PlusWeeks(-1), 0, 1), new FrequencyWeek(Sunday, 2, 1)], Sunday, 2);

        string page = Render<FrequencyWeeks>(with => with.Add(p => p.Ledgers, [ledger])).Markup;

        foreach (string needed in (string[])["1 a week", "Weeks from Sunday", "1 of 3 used, 2 left", "fewer than ordered: the prescriber is told", "1 more than ordered"])
            Assert.Contains(needed, page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_first_visit_without_a_time_says_what_it_counts_from()
    {
        Instant from = Arrangement.At(Arrangement.Monday, 6);
        var row = new FirstVisitRow("F1", null, "Somebody Invented", "First visit after referral", new FirstVisit(from + Duration.FromHours(48), from, true), false);

        string list = Render<FirstVisitList>(with => with.Add(p => p.Rows, [row]).Add(p => p.Zone, Arrangement.Zone)).Markup;

        Assert.Contains("No time was written down: counted from Mon 8 Mar 2027, 06:00", list, StringComparison.Ordinal);
        Assert.Contains(">Wed 10 Mar 2027, 06:00</time>", list, StringComparison.Ordinal);
    }
}
