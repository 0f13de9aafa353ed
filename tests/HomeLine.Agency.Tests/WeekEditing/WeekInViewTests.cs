using System.Collections.Immutable;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekEditing;

/// <summary>The demonstration week looked at as a whole. Invented data.</summary>
public sealed class WeekInViewTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private async Task<(TestAgency Agency, WorkingWeek Week)> OpenAsync()
    {
        TestAgency agency = await DemoOnDatabase.OpenAsync(Provider.Sqlite, cluster, DemoAgency.Now);
        return (agency, (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value);
    }

    [Fact]
    public async Task The_load_of_the_nurses_adds_up_to_the_figures_of_the_plan()
    {
        (TestAgency agency, WorkingWeek week) = await OpenAsync();
        await using (agency)
        {
            ImmutableArray<NurseLoad> load = NurseLoad.Of(DraftBoard.Of(week), LoadRules.Of(week.Agency.Files.Policy, week.FirstDay));

            // From the scenario's own tables: 69 nurse visits, 5,320 minutes in homes, 1,281 minutes of driving, 12,600 minutes of shifts.
            Assert.Equal(69, load.Sum(n => n.Visits));
            Assert.Equal(5_320, load.Sum(n => n.HomeMinutes));
            Assert.Equal(1_281, load.Sum(n => n.DrivingMinutes));
            Assert.Equal(12_600, load.Sum(n => n.ShiftMinutes));
            // Bramble Quickstile teaches on Tuesday, Wednesday and Thursday evening.
            Assert.Equal(3, load.Single(n => n.Nurse == "N6").Evenings);
        }
    }

    [Fact]
    public async Task What_falls_due_this_week_is_what_the_week_has_to_do()
    {
        (TestAgency agency, WorkingWeek week) = await OpenAsync();
        await using (agency)
        {
            ImmutableArray<WeeksAhead> ahead = WeeksAhead.Of(week);

            Assert.Equal([DemoAgency.FirstDay, DemoAgency.FirstDay.PlusDays(7), DemoAgency.FirstDay.PlusDays(14)], ahead.Select(w => w.FirstDay));
            Assert.Equal(ahead[0].Items, ahead[0].DueByDay.Sum());
            Assert.Equal(28, ahead[0].NurseDays.Sum());
            // Weekly dressings come round again: the next weeks are never empty.
            Assert.All(ahead, w => Assert.InRange(w.Percent, 1, 150));
        }
    }

    [Fact]
    public async Task More_faces_than_the_cap_of_policy_are_pointed_out()
    {
        (TestAgency agency, WorkingWeek week) = await OpenAsync();
        await using (agency)
        {
            ImmutableArray<FacesOfPatients> faces = FacesOfPatients.Of(week);

            // Policy faces.max: our own default.
            Assert.All(faces, f => Assert.Equal(f.Faces.Length > 4, f.IsTooMany));
            Assert.All(faces, f => Assert.Equal(f.Faces.Length > 1, (f with { MostFaces = 1 }).IsTooMany));
        }
    }

    [Fact]
    public async Task A_patient_seen_by_one_nurse_alone_has_index_one()
    {
        (TestAgency agency, WorkingWeek week) = await OpenAsync();
        await using (agency)
        {
            FacesOfPatients teaching = FacesOfPatients.Of(week).Single(f => f.Patient.Value == "P54");

            Assert.Equal("Bramble Quickstile", teaching.Faces[0].Nurse);
            Assert.All(FacesOfPatients.Of(week).Where(f => f.Faces.Length == 1 && f.Visits > 1), f => Assert.Equal(1, f.Index));
            // The ledger names nurses by code, the draft too: nobody is counted twice.
            Assert.DoesNotContain(FacesOfPatients.Of(week).SelectMany(f => f.Faces), f => f.Nurse.Length == 2);
        }
    }

    [Fact]
    public async Task The_difference_names_families_and_nurses_and_both_scores()
    {
        (TestAgency agency, WorkingWeek week) = await OpenAsync();
        await using (agency)
        {
            Assert.True(DraftDifference.Of(week).IsNone);
            string visit = week.Week.Visits.Single(v => v.Patient.Value == "P58").Id;
            WorkingPlace place = (await agency.Ask<EditWeek>().PlacesOfVisitAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, visit, Cancel)).Value
                .First(p => p.Day > new LocalDate(2027, 3, 9));
            WorkingWeek moved = (await agency.Ask<EditWeek>().MakeAsync(
                TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.Move(visit, place.Nurse, place.Day, place.Position), Cancel)).Value;

            DraftDifference difference = DraftDifference.Of(moved);

            Assert.Contains(difference.Families, f => f.Id == "P58" && f.WasTold);
            Assert.Contains(difference.Nurses, n => n.Id == "N2");
            Assert.Contains(difference.Moves, m => m.StartsWith("P58 moves from Tue 08:24 N2", StringComparison.Ordinal));
            Assert.Contains(difference.Tiers, t => t is { Tier: "Work", More: not 0 });
            Assert.Empty(difference.BrokenRules);
        }
    }

    [Fact]
    public void A_start_inside_the_told_range_keeps_the_promise_and_another_nurse_does_not()
    {
        var told = new WeekVisit
        {
            Id = "v",
            Patient = new PatientId("P03"),
            Nurse = "N1",
            Day = DemoAgency.FirstDay,
            Start = new LocalTime(9, 0),
            Minutes = 60,
            Care = [],
            Promise = PromiseState.Told,
            ToldFrom = new LocalTime(9, 0),
        };

        Assert.True(Promises.Hold(told, told with { Start = new LocalTime(10, 0) }, 60));
        Assert.False(Promises.Hold(told, told with { Start = new LocalTime(10, 1) }, 60));
        Assert.False(Promises.Hold(told, told with { Start = new LocalTime(8, 59) }, 60));
        Assert.False(Promises.Hold(told, told with { Nurse = "N2" }, 60));
    }

    [Fact]
    public void Undo_and_redo_walk_the_steps_since_the_week_was_planned()
    {
        static WeekEdit Edit(int number, int revision, EditKind kind, int version = 1) => new()
        {
            FirstDay = DemoAgency.FirstDay,
            Number = number,
            Base = version,
            Revision = revision,
            Kind = kind,
            Words = $"step {number}",
            At = DemoAgency.Now,
            By = "C",
        };
        ImmutableArray<WeekEdit> edits =
            [Edit(1, 1, EditKind.Move), Edit(2, 3, EditKind.Move), Edit(3, 4, EditKind.Swap), Edit(4, 5, EditKind.Undo)];

        EditLog log = EditLog.Of(edits, 1, 5);

        // Revision 2 was a planning run: step 1 lies before it.
        Assert.Equal([2, 3, 4], log.Live.Select(e => e.Number));
        Assert.Equal(2, log.Undoable!.Number);
        Assert.Equal(3, log.Redoable!.Number);
        Assert.Null(EditLog.Of(edits, 1, 6).Undoable);
        Assert.Equal([2], EditLog.Of(edits, 2, 0).Waiting(2).Select(e => e.Number));
        Assert.Empty(EditLog.Of([.. edits, Edit(5, 5, EditKind.Published)], 2, 0).Waiting(2));
    }
}
