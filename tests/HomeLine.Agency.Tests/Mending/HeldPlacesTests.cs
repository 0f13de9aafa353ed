using HomeLine.Agency.Mending;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Tests.Storage;
using HomeLine.Agency.Today;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning;
using NodaTime;
using static HomeLine.Agency.Tests.DemoOnDatabase;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>A place taken for a referral is kept free until it lapses or somebody lets it go. Our own scenario, invented throughout.</summary>
public sealed class HeldPlacesTests(PostgresCluster cluster)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static ReferralFacts Vervain { get; } = new()
    {
        Name = "Vervain Thistlecomb",
        Home = new MapPoint(24.5, 13.2),
        HomeAt = Tuesday.Day.At(new LocalTime(13, 0)),
        NextDoseAt = Tuesday.Day.At(new LocalTime(20, 0)),
        SuppliesAt = Tuesday.Day.At(new LocalTime(16, 30)),
        Line = LineKind.Picc,
        PlacedOn = Tuesday.Day.PlusDays(-1),
        Dressing = DressingKind.GauzeUnderFilm,
        TipConfirmed = true,
        FirstDoseGiven = true,
        OrdersReceived = true,
        SomebodyLearns = true,
    };

    private async Task<(TestAgency Agency, FiledTrouble Trouble, HeldPlace Place)> HeldAsync(Provider provider = Provider.Sqlite)
    {
        TestAgency agency = await OpenAsync(provider, cluster, DemoAgency.At(9, 8, 20));
        FiledTrouble trouble = await agency.ReportAsync(new CanWeTakeIt(Vervain));
        MendAnswer tonight = trouble.Offer!.Answers.First(a => a.Title.StartsWith("Juniper Brasslock, Tue 9 Mar 16:30", StringComparison.Ordinal));
        FiledTrouble taken = (await agency.ApplyAsync(trouble, tonight.Key, "Juniper and the clinical manager agree")).Trouble;
        return (agency, taken, tonight.Holds!);
    }

    [Theory]
    [MemberData(nameof(TestAgency.BothProviders), MemberType = typeof(TestAgency))]
    public async Task The_place_stands_on_the_board_the_week_and_the_draft_and_is_in_no_stored_week(Provider provider)
    {
        (TestAgency agency, FiledTrouble taken, HeldPlace place) = await HeldAsync(provider);
        await using TestAgency closing = agency;

        Assert.Equal(("N1", new LocalTime(16, 30)), (place.Nurse, place.Start));
        PlaceToday shown = Assert.Single((await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Places);
        Assert.Equal((taken.Id, "Vervain Thistlecomb", place.Until), (shown.Id, shown.Name, shown.Until));
        WeekBoard board = (await agency.Ask<AskWeek>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, draft: false, Cancel)).Value;
        Assert.Contains(board.Nurses.Single(n => n.NurseId == "N1").Days.Single(d => d.Day == Tuesday.Day).Stops, s => s.PatientName == "Place held for Vervain Thistlecomb");
        Assert.DoesNotContain((await agency.WeekAsync()).Visits, v => v.Minutes == place.Minutes && v.Start == place.Start && v.Nurse == "N1" && v.Day == place.Day);

        var editing = agency.Ask<EditWeek>();
        WorkingWeek week = (await editing.OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        WeekVisit held = week.Week.Visits.Single(v => v.Day == place.Day && v.Start == place.Start && v.Nurse == "N1");
        Assert.StartsWith("A place held for a referral.", week.WhyItStays(held), StringComparison.Ordinal);
        Assert.False((await editing.MakeAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.TakeOut(held.Id), Cancel)).Succeeded);
        // A change of another visit keeps the place in sight and out of what is stored.
        WorkingWeek pinned = (await editing.MakeAsync(TestAgency.Coordinator, DemoAgency.FirstDay, 0, new HandEdit.Pin(Tuesday.Visit(11, "P35")), Cancel)).Value;
        Assert.Contains(pinned.Week.Visits, v => v.Id == held.Id);
        await using AgencyDb db = agency.Open();
        Assert.DoesNotContain((await WeekStore.DraftAsync(db, DemoAgency.FirstDay, Cancel))!.Week.Visits, v => v.Id == held.Id);
    }

    [Fact]
    public async Task Nobody_else_is_put_into_the_place_by_an_answer_or_by_planning()
    {
        (TestAgency agency, _, HeldPlace place) = await HeldAsync();
        await using TestAgency closing = agency;

        FiledTrouble second = await agency.ReportAsync(new CanWeTakeIt(Vervain with { Name = "Somebody else" }));
        FiledTrouble absence = await agency.ReportAsync(new NurseIsOut("N4", Tuesday.Day.At(new LocalTime(10, 15)), Tuesday.Day, "car"));

        Assert.DoesNotContain(second.Offer!.Answers, a => a.Holds is { Nurse: "N1" } other && other.Day == place.Day);
        LocalTime ends = place.Start.PlusMinutes(place.Minutes);
        foreach (WeekVisit visit in absence.Offer!.Answers.SelectMany(a => a.Changes).Select(c => c.After).OfType<WeekVisit>().Where(v => v.Nurse == "N1" && v.Day == place.Day))
            Assert.True(visit.Start.PlusMinutes(visit.Minutes) <= place.Start || visit.Start >= ends, $"{visit.Start}");

        var planner = agency.Ask<PlanTheWeek>();
        Assert.True((await planner.StartAsync(TestAgency.Coordinator, DemoAgency.FirstDay, new PlanOptions(Iterations: 200), Cancel)).Succeeded);
        while (planner.Current!.State == PlanRunState.Running) await Task.Delay(20, Cancel);
        Assert.True(planner.Current.State == PlanRunState.Finished, planner.Current.Message);
        WorkingWeek draft = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        Assert.True(draft.Hand.Check.Accepted, string.Join("\n", draft.Hand.Check.Findings.Select(f => f.Reason.Sentence)));
        Assert.Contains(draft.Week.Visits, v => v.Nurse == "N1" && v.Day == place.Day && v.Start == place.Start);
    }

    /// <summary>The evening nurse is beyond the river until after 19:30: moving three of his families does not bring him back in time.</summary>
    [Fact]
    public async Task That_no_way_without_overtime_was_found_is_said()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 8, 20));

        FiledTrouble trouble = await agency.ReportAsync(new CanWeTakeIt(Vervain));

        Assert.Contains(trouble.Offer!.RuledOut, r => r.StartsWith("Without overtime nobody has room in time", StringComparison.Ordinal));
        Assert.DoesNotContain(trouble.Offer.Answers, a => a.Title.StartsWith("Bramble Quickstile", StringComparison.Ordinal));
    }

    [Fact]
    public async Task It_lapses_by_itself_or_is_let_go_with_a_reason()
    {
        (TestAgency agency, FiledTrouble taken, HeldPlace place) = await HeldAsync();
        await using TestAgency closing = agency;
        var letting = agency.Ask<ReleasePlace>();
        async Task<int> PlacesAsync() => (await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Places.Length;

        Assert.Equal("release-reason-missing", (await letting.ReleaseAsync(TestAgency.Coordinator, taken.Id, " ", Cancel)).Refusal!.Code);
        Assert.Equal(1, await PlacesAsync());
        FiledTrouble gone = (await letting.ReleaseAsync(TestAgency.Coordinator, taken.Id, "went to another agency", Cancel)).Value;
        Assert.Equal("went to another agency", ((CanWeTakeIt)gone.Entry).Released!.Why);
        Assert.Equal(0, await PlacesAsync());
        Assert.Equal("no-place-held", (await letting.ReleaseAsync(TestAgency.Coordinator, taken.Id, "again", Cancel)).Refusal!.Code);

        (TestAgency other, _, HeldPlace second) = await HeldAsync();
        await using TestAgency closingToo = other;
        // An hour before the visit nothing is moved any more: then it is planned, or it is gone.
        Assert.Equal(DemoAgency.At(9, 15, 30), second.Until);
        await other.MoveClockAsync(9, 15, 30);
        Assert.Empty((await other.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Places);
        Assert.Equal(place.Start, second.Start);
    }

    [Fact]
    public async Task When_her_nurse_is_out_the_place_is_lost_and_it_is_said()
    {
        (TestAgency agency, FiledTrouble taken, _) = await HeldAsync();
        await using TestAgency closing = agency;

        FiledTrouble trouble = await agency.ReportAsync(new NurseIsOut("N1", Tuesday.Day.At(new LocalTime(12, 0)), Tuesday.Day, "ill"));

        Assert.Contains(trouble.Offer!.Facts, f => f.Contains("Vervain Thistlecomb is lost", StringComparison.Ordinal) && f.Contains(taken.Id, StringComparison.Ordinal));
        Assert.All(trouble.Offer.Answers.SelectMany(a => a.Changes), c => Assert.DoesNotContain("Place held", c.Words, StringComparison.Ordinal));
        Assert.NotNull((await agency.ApplyAsync(trouble)).Week);
    }

    /// <summary>Wednesday is full: the first of a few morning doses for which others have to make room.</summary>
    private static async Task<(FiledTrouble Trouble, MendAnswer Answer)> WithMovesAsync(TestAgency agency)
    {
        foreach (int hour in (int[])[12, 13, 14, 15, 16])
        {
            LocalDate wednesday = Tuesday.Day.PlusDays(1);
            FiledTrouble trouble = await agency.ReportAsync(new CanWeTakeIt(Vervain with
            {
                HomeAt = wednesday.At(new LocalTime(hour - 4, 0)),
                SuppliesAt = wednesday.At(new LocalTime(hour - 4, 0)),
                NextDoseAt = wednesday.At(new LocalTime(hour, 0)),
            }));
            if (trouble.Offer!.Answers.FirstOrDefault(a => a.Holds is not null && !a.Changes.IsEmpty) is { } moving) return (trouble, moving);
            await agency.Ask<MendTrouble>().CloseAsync(TestAgency.Coordinator, trouble.Id, "the next one is looked at", Cancel);
        }

        throw new InvalidOperationException("Nobody has to make room in any of them.");
    }

    [Fact]
    public async Task Where_others_must_make_room_they_are_shown_and_move_only_once_it_is_chosen_and_then_the_place_is_held()
    {
        await using TestAgency agency = await OpenAsync(Provider.Sqlite, cluster, DemoAgency.At(9, 8, 20));
        (FiledTrouble trouble, MendAnswer moving) = await WithMovesAsync(agency);

        Assert.All(moving.Changes, c => Assert.NotNull(c.Before));
        Assert.Contains(moving.Cautions, c => c.Contains("room for it, once this is chosen", StringComparison.Ordinal));
        Assert.DoesNotContain(moving.ToTell, p => p.Who.Contains("Vervain", StringComparison.Ordinal));
        WeekVisit before = moving.Changes[0].Before!;
        Assert.Equal(before.Start, (await agency.WeekAsync()).Visits.Single(v => v.Id == before.Id).Start);

        AppliedTrouble applied = await agency.ApplyAsync(trouble, moving.Key, "the clinical manager agrees");

        Assert.NotNull(applied.Week);
        Assert.Equal(moving.ToTell.Length, applied.ToTell.Length);
        foreach (VisitChange change in moving.Changes)
        {
            WeekVisit now = applied.Week.Visits.Single(v => v.Id == change.Before!.Id);
            Assert.Equal((change.After!.Nurse, change.After.Day, change.After.Start), (now.Nurse, now.Day, now.Start));
        }

        Assert.Single((await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Places);
        WeekBoard board = (await agency.Ask<AskWeek>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, draft: false, Cancel)).Value;
        Assert.Contains(board.Nurses.Single(n => n.NurseId == moving.Holds!.Nurse).Days.Single(d => d.Day == moving.Holds!.Day).Stops, s => s.IsHeldPlace);
    }

    [Fact]
    public async Task Closing_the_referral_lets_the_place_go()
    {
        (TestAgency agency, FiledTrouble taken, _) = await HeldAsync();
        await using TestAgency closing = agency;
        string kept = ((CanWeTakeIt)taken.Entry).KeptAs!;

        Assert.True((await agency.Ask<KeepReferral>().CloseAsync(TestAgency.Coordinator, kept, "declined: no supplies", Cancel)).Succeeded);

        Assert.Empty((await agency.Ask<AskToday>().AskAsync(TestAgency.Coordinator, Cancel)).Value.Places);
        FiledTrouble found = (await agency.Ask<MendTrouble>().FindAsync(TestAgency.Coordinator, taken.Id, Cancel)).Value;
        Assert.Equal("The referral was closed: declined: no supplies", ((CanWeTakeIt)found.Entry).Released!.Why);
    }

    [Fact]
    public async Task What_stands_where_a_number_would_is_a_word()
    {
        (TestAgency agency, FiledTrouble taken, _) = await HeldAsync();
        await using TestAgency closing = agency;

        WorkingWeek week = (await agency.Ask<EditWeek>().OpenAsync(TestAgency.Coordinator, DemoAgency.FirstDay, Cancel)).Value;
        WeekBoard board = (await agency.Ask<AskWeek>().AskAsync(TestAgency.Coordinator, DemoAgency.FirstDay, draft: false, Cancel)).Value;

        Assert.Equal("(held)", Assert.Single(board.Nurses.SelectMany(n => n.Days).SelectMany(d => d.Stops), s => s.IsHeldPlace).Visit.Patient.Value);
        Assert.DoesNotContain(week.Agency.Roster.Patients, p => p.Id.Value.Contains(taken.Id, StringComparison.Ordinal));
        Assert.DoesNotContain(FacesOfPatients.Of(week), f => f.Name.StartsWith("Place held", StringComparison.Ordinal));
    }
}
