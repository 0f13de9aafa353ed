using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Visits;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using static HomeLine.Agency.Tests.DemoOnDatabase;
using static HomeLine.Agency.Tests.Visits.VisitOf;

namespace HomeLine.Agency.Tests.Visits;

/// <summary>The summary is the record, in words: nothing that was written down is left out of the prescriber's copy.</summary>
public sealed class VisitSummaryEqualsRecordTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<(VisitRecord Record, string Prescriber, string Patient)> WrittenAsync(TestAgency agency)
    {
        VisitEntry entry = await DoneAsync(agency, Juniper, "2027-03-09-P12", 9, 8, 10);
        entry = entry.ButItem(CareItem.Connector, i => i.NotDone(NotDoneReason.Other, "none in the bag"))
            .ButLine(l => l with { Found = SiteFinding.Tenderness, FoundText = "size of a coin", ArmGirthCm = 31.5m, Lumens = [new LumenEntry("A", true, BloodReturn.Sluggish)] }) with
        {
            Note = "daughter was there",
            AllergyTold = "soap?",
            Incident = Incident.Fall,
            IncidentText = "tripped yesterday, no injury told",
            Teaching = [new TeachBack("self", CareItem.LumenFlush, null, TeachLevel.WithPrompts, false)],
            Draws = [entry.Draws[0] with { Tubes = "one lavender top", Dropped = "branch laboratory box" }],
            Told = new PractitionerTold("Practitioner F", null, "will call back"),
        };
        VisitRecord record = (await agency.Ask<RecordVisit>().SignAsync(Juniper, await entry.AnsweredAsync(agency, Juniper, "kept as told"), Cancel)).Value;
        return (record, await TextAsync(agency, record.Id, SummaryReader.Prescriber), await TextAsync(agency, record.Id, SummaryReader.Patient));
    }

    private static async Task<string> TextAsync(TestAgency agency, string record, SummaryReader reader)
    {
        VisitSummaryContent content = (await agency.Ask<AskVisit>().SummaryAsync(Juniper, record, reader, onPaper: true, Cancel)).Value;
        return string.Join('\n', content.Warnings.Concat(content.Sections.SelectMany(s => s.Lines.Select(l => $"{s.Title}: {l.Label} {l.Text}"))));
    }

    [Fact]
    public async Task Every_fact_of_the_record_stands_in_the_prescribers_copy()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));

        (VisitRecord record, string text, _) = await WrittenAsync(agency);

        string[] facts =
        [
            "Larkspur Cogglewick", "Juniper Brasslock, RN", "08:10", "09:00", "none in the bag", "tenderness", "size of a coin", "31.5 cm", "blood return sluggish",
            "daughter was there", "soap?", "tripped yesterday, no injury told", "did it back with prompts", "one lavender top", "branch laboratory box", "Practitioner F", "will call back",
            "Sun 14 Mar to Tue 16 Mar", "kept as told",
        ];
        Assert.All(facts, fact => Assert.Contains(fact, text, StringComparison.Ordinal));
        Assert.All(record.Answered, a => Assert.Contains(a.Sentence, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_patients_copy_is_plain_and_names_both_numbers_to_call()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));

        (_, _, string text) = await WrittenAsync(agency);

        Assert.Contains("What was done:  Change the dressing, PICC line.", text, StringComparison.Ordinal);
        Assert.Contains("What was not done:  Change the cap, PICC line.", text, StringComparison.Ordinal);
        Assert.Contains("Call 911 now for", text, StringComparison.Ordinal);
        Assert.DoesNotContain("tripped", text, StringComparison.Ordinal);
        Assert.DoesNotContain("P12-1", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Printing_is_kept_in_the_trail()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 12, 0));
        (VisitRecord record, _, _) = await WrittenAsync(agency);
        await using Agency.Storage.AgencyDb db = agency.Open();
        Assert.Equal(2, db.AuditEntries.Count(e => e.Action == "print-visit-summary" && e.Subject == $"P12 visit {record.Id}"));
    }
}
