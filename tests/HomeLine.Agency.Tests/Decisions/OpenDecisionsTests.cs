using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Agency.Tests.Decisions;

/// <summary>The list of open questions on the invented agency's Monday.</summary>
public sealed class OpenDecisionsTests
{
    private static readonly PatientId P01 = new("P01");
    private static readonly LineId Picc = new("P01-1");

    private static DecisionFacts Facts(AgencyRoster roster, params ImmutableArray<DecisionRecord> records) =>
        new(new AgencyAtHand(roster, CareFiles.Of(roster), DemoAgency.Now) { Decided = records }, [DemoAgency.Published], [], []);

    private static ImmutableArray<OpenDecision> Of(AgencyRoster roster, params ImmutableArray<DecisionRecord> records) =>
        OpenDecisions.Of(Facts(roster, records));

    private static AgencyRoster With(params ImmutableArray<LineEvent> events) =>
        DemoAgency.Roster with { Events = [.. DemoAgency.Roster.Events, .. events] };

    private static LineEvent Event(LineEventKind kind, int day, string id = "T1") => new()
    {
        Id = new EventId(id),
        Patient = P01,
        Line = Picc,
        Kind = kind,
        Performed = CareMoment.SometimeOn(new LocalDate(2027, 3, day)),
        RecordedAt = DemoAgency.Now,
    };

    private static DecisionRecord Record(OpenDecision question, DecisionChoice choice, LocalDate? until = null) => new()
    {
        Id = "D1",
        Key = question.Key,
        Round = question.Round,
        Code = question.Code,
        Patient = question.Patient,
        Line = question.Line,
        Question = question.Sentence,
        Choice = choice,
        Reason = "spoken with the prescriber",
        LicensedName = "H. Educator RN",
        EnteredBy = "Hyssop",
        DecidedAt = DemoAgency.Now,
        Until = until,
    };

    [Fact]
    public void Every_question_of_the_clocks_stands_on_the_list_exactly_once()
    {
        ImmutableArray<OpenDecision> open = Of(DemoAgency.Roster);

        Assert.Equal(open.Length, open.Select(d => d.Key).Distinct().Count());
        foreach (Patient patient in DemoAgency.Roster.Patients)
        {
            CareAnswer answer = DemoAgency.Files.WhatIsDue(patient.Id, DemoAgency.Now);
            Assert.All(answer.Decisions, d => Assert.Contains(open, o => o.Patient == d.Patient && o.Code == d.Code && o.Line == d.Line));
            Assert.All(answer.Locks, l => Assert.Contains(open, o => o.Patient == patient.Id && o.Code == l.Code && o.Line == l.Line));
        }
    }

    [Fact]
    public void The_invented_Monday_asks_about_the_longer_line_the_occluded_lumen_and_the_lapsed_caregiver()
    {
        var open = Of(DemoAgency.Roster).Select(d => (d.Patient.Value, d.Code)).ToHashSet();

        Assert.Contains(("P24", DecisionCodes.LengthGrew), open);
        Assert.Contains(("P33", DecisionCodes.LumenOccluded), open);
        Assert.Contains(("P28", DecisionCodes.ValidationLapsed), open);
    }

    [Fact]
    public void The_same_question_keeps_its_key_the_next_day()
    {
        AgencyAtHand monday = Facts(DemoAgency.Roster).Agency;
        AgencyAtHand tuesday = monday with { Now = DemoAgency.Now + Duration.FromDays(1) };

        Assert.Equal(
            OpenDecisions.OfClocks(monday, new PatientId("P24")).Select(d => d.Key),
            OpenDecisions.OfClocks(tuesday, new PatientId("P24")).Select(d => d.Key));
    }

    [Fact]
    public void What_cannot_wait_comes_first_and_the_oldest_of_it_first()
    {
        ImmutableArray<OpenDecision> open = Of(With(Event(LineEventKind.UseLocked, 7)));

        Assert.Equal(open.OrderBy(d => d.Right.Group).Select(d => d.Key), open.Select(d => d.Key));
        Assert.Contains(open.TakeWhile(d => d.Right.Group == DecisionGroup.Now), d => d.Patient == P01 && d.Since == new LocalDate(2027, 3, 7));
    }

    [Fact]
    public void A_settled_question_leaves_the_list_and_one_accepted_until_a_day_comes_back_after_it()
    {
        OpenDecision lapsed = Of(DemoAgency.Roster).First(d => d.Code == DecisionCodes.ValidationLapsed);
        var today = new LocalDate(2027, 3, 8);

        Assert.DoesNotContain(Of(DemoAgency.Roster, Record(lapsed, DecisionChoice.Settle)), d => d.Key == lapsed.Key);
        Assert.DoesNotContain(Of(DemoAgency.Roster, Record(lapsed, DecisionChoice.AcceptUntil, today)), d => d.Key == lapsed.Key);
        Assert.Equal(1, Of(DemoAgency.Roster, Record(lapsed, DecisionChoice.AcceptUntil, today.PlusDays(-1))).Single(d => d.Key == lapsed.Key).Round);
    }

    [Fact]
    public void A_release_that_was_voided_brings_the_lock_back()
    {
        AgencyRoster locked = With(Event(LineEventKind.UseLocked, 7, "T1"));
        OpenDecision question = Of(locked).Single(d => d.Code == DecisionCodes.UseLocked);
        DecisionRecord released = Record(question, DecisionChoice.ReleaseLine);

        AgencyRoster after = locked with { Events = locked.Events.Add(Event(LineEventKind.UseReleased, 7, "T2")) };
        AgencyRoster voided = after with { Events = after.Events.Add(Event(LineEventKind.PhoneCall, 7, "T3") with { Voids = new EventId("T2") }) };

        Assert.DoesNotContain(Of(after, released), d => d.Code == DecisionCodes.UseLocked);
        Assert.Contains(Of(voided, released), d => d.Key == question.Key && d.Round == 1);
    }

    [Fact]
    public void Only_a_lock_can_be_kept_and_what_is_locked_is_not_accepted_as_it_is()
    {
        OpenDecision asked = Of(DemoAgency.Roster).Single(d => d.Code == DecisionCodes.LengthGrew);
        LineEvent grown = Event(LineEventKind.Measured, 7) with { Patient = new PatientId("P24"), Line = new LineId("P24-1"), OutsideLengthCm = 4 };
        OpenDecision locked = Of(With(grown)).Single(d => d.Code == DecisionCodes.LengthGrew);

        Assert.Equal([DecisionChoice.AcceptUntil, DecisionChoice.LockLine, DecisionChoice.ReleaseLine], asked.Choices);
        Assert.Equal([DecisionChoice.KeepLocked, DecisionChoice.ReleaseLine], locked.Choices);
    }

    [Fact]
    public void Care_refused_twice_is_asked_about_and_care_given_in_between_starts_anew()
    {
        LineEvent first = Event(LineEventKind.Refused, 5, "T1"), second = Event(LineEventKind.Refused, 7, "T2");

        Assert.Single(Of(With(first, second)), d => d.Patient == P01 && d.Code == AppDecisionCodes.RefusedTwice);
        Assert.DoesNotContain(Of(With(first)), d => d.Code == AppDecisionCodes.RefusedTwice);
        Assert.DoesNotContain(
            Of(With(first, Event(LineEventKind.DressingChanged, 6, "T3"), second)), d => d.Code == AppDecisionCodes.RefusedTwice);
    }

    [Fact]
    public void An_exception_that_ended_yesterday_is_asked_about_and_no_longer_applies()
    {
        var ended = new CareException(P01, "dressing.film.max", 5, "H. Educator RN", new LocalDate(2027, 3, 7), "skin");
        AgencyRoster roster = DemoAgency.Roster with { Exceptions = [ended] };

        Assert.Contains(Of(roster), d => d.Patient == P01 && d.Code == AppDecisionCodes.ExceptionEnded);
        Assert.DoesNotContain(Of(roster with { Exceptions = [ended with { Through = new LocalDate(2027, 3, 8) }] }), d => d.Code == AppDecisionCodes.ExceptionEnded);
    }

    [Fact]
    public void Every_code_of_the_clocks_and_of_the_agency_has_a_written_right()
    {
        IEnumerable<string> codes = new[] { typeof(DecisionCodes), typeof(AppDecisionCodes) }
            .SelectMany(t => t.GetFields()).Select(f => (string)f.GetRawConstantValue()!);

        Assert.All(codes, code => Assert.NotEmpty(DecisionRights.Of(code).Choices));
    }

    [Fact]
    public void A_looser_order_is_asked_about_once_for_each_item_it_loosens()
    {
        var order = new CareOrder
        {
            Id = "P01-loose",
            Patient = P01,
            Kind = OrderKind.Interval,
            Item = CareItem.Dressing,
            EveryDays = 14,
            StartsOn = new LocalDate(2027, 3, 1),
        };

        Assert.Single(Of(DemoAgency.Roster with { Orders = [.. DemoAgency.Roster.Orders, order] }), d => d.Code == DecisionCodes.LooserOrder);
    }

    [Fact]
    public void A_wish_about_a_protected_trait_of_staff_goes_to_the_clinical_manager_and_planning_does_not_follow_it()
    {
        AgencyRoster wishing = DemoAgency.Roster with
        {
            Patients = [.. DemoAgency.Roster.Patients.Select(p => p.Id.Value == "P22" ? p with { ExcludedTraits = [.. p.ExcludedTraits, "religion:any"], RequiredTraits = [.. p.RequiredTraits, "female"] } : p)],
        };

        OpenDecision asked = Assert.Single(OpenDecisions.Of(Facts(wishing)), d => d.Code == AppDecisionCodes.ProtectedWish);
        WeekDemand demand = WeekDemand.Of(wishing, CareFiles.Of(wishing), DemoAgency.FirstDay, 7, DemoAgency.Now);

        Assert.Equal("P22", asked.Patient.Value);
        Assert.Contains("Planning does not follow it.", asked.Sentence, StringComparison.Ordinal);
        Assert.False(asked.Right.ByNurse);
        Assert.DoesNotContain(demand.Problem.Patients.Single(p => p.Id == "P22").ExcludedTraits, ProtectedWish.Is);
        // A wish for a nurse of one's own sex is kept.
        Assert.Contains("female", demand.Problem.Patients.Single(p => p.Id == "P22").RequiredTraits);
    }
}
