using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.Tests.Roster;

/// <summary>A roster that is brought in again takes back nothing that the agency wrote itself.</summary>
public sealed class WhatAnImportKeepsTests
{
    private static AgencyRoster With(Func<CareOrder, CareOrder> change) =>
        DemoAgency.Roster with { Orders = [.. DemoAgency.Roster.Orders.Select(o => o.Id == "P03-visits" ? change(o) : o)] };

    private static CareOrder After(AgencyRoster stored, AgencyRoster incoming) =>
        RosterChange.Between(stored, incoming).Orders.After.Single(o => o.Id == "P03-visits");

    [Fact]
    public void As_needed_visits_that_were_used_stay_used()
    {
        Assert.Equal(2, After(With(o => o with { AsNeededUsed = 2 }), DemoAgency.Roster).AsNeededUsed);
        Assert.Equal(3, After(DemoAgency.Roster, With(o => o with { AsNeededUsed = 3 })).AsNeededUsed);
        Assert.Empty(RosterChange.Between(With(o => o with { AsNeededUsed = 2 }), DemoAgency.Roster).Orders.Changed);
    }

    [Fact]
    public void A_confirmation_stays_as_long_as_the_order_says_what_was_confirmed()
    {
        AgencyRoster confirmed = With(o => o with { Item = CareItem.Dressing, EveryDays = 14, Confirmed = true });

        Assert.True(After(confirmed, With(o => o with { Item = CareItem.Dressing, EveryDays = 14 })).Confirmed);
        Assert.False(After(confirmed, With(o => o with { Item = CareItem.Dressing, EveryDays = 21 })).Confirmed);
    }

    [Fact]
    public void A_caregiver_who_was_stopped_and_a_patient_who_came_home_stay_so()
    {
        var lastFriday = new LocalDate(2027, 3, 5);
        AgencyRoster stored = DemoAgency.Roster with
        {
            Caregivers = [.. DemoAgency.Roster.Caregivers.Select(c => c.Patient.Value == "P03" ? c with { ValidThrough = lastFriday } : c)],
            Holds = [.. DemoAgency.Roster.Holds.Select(h => h.Patient.Value == "P11" ? h with { Through = new LocalDate(2027, 3, 9) } : h)],
        };
        var putDown = PutDown.Nothing with { Caregivers = ["P03 spouse"], Patients = ["P11"] };

        RosterChange change = RosterChange.Between(stored, DemoAgency.Roster, putDown);

        Assert.Empty(change.Caregivers.Changed);
        Assert.Empty(change.Holds.Changed);
        Assert.NotEmpty(RosterChange.Between(stored, DemoAgency.Roster).Caregivers.Changed);
    }

    [Fact]
    public void An_order_that_a_newer_one_ended_stays_ended_and_corrected_dates_stay_corrected()
    {
        var ended = new LocalDate(2027, 3, 9);
        var born = new LocalDate(1971, 4, 2);
        AgencyRoster stored = With(o => o with { EndsOn = ended }) with
        {
            Patients = [.. DemoAgency.Roster.Patients.Select(p => p.Id.Value == "P03" ? p with { BornOn = born } : p)],
        };
        PutDown putDown = PutDown.Nothing with { EndedOrders = ["P03-visits"], Corrected = ["P03"] };

        RosterChange change = RosterChange.Between(stored, DemoAgency.Roster, putDown);

        Assert.Equal(ended, change.Orders.After.Single(o => o.Id == "P03-visits").EndsOn);
        Assert.Equal(born, change.Patients.After.Single(p => p.Id.Value == "P03").BornOn);
        Assert.NotEqual(ended, After(stored, DemoAgency.Roster).EndsOn);
    }

    [Fact]
    public void Leave_entered_here_stays_beside_that_of_the_file()
    {
        var ill = new Leave(new LocalDate(2027, 3, 9), new LocalDate(2027, 3, 9), "ill");
        AgencyRoster stored = DemoAgency.Roster with
        {
            Nurses = [.. DemoAgency.Roster.Nurses.Select(n => n.Id == "N2" ? n with { Leaves = [.. n.Leaves, ill] } : n)],
        };

        NurseFile after = RosterChange.Between(stored, DemoAgency.Roster, PutDown.Nothing with { OnLeave = ["N2"] }).Nurses.After.Single(n => n.Id == "N2");

        Assert.Equal([.. stored.Nurses.Single(n => n.Id == "N2").Leaves], after.Leaves);
        Assert.DoesNotContain(ill, RosterChange.Between(stored, DemoAgency.Roster).Nurses.After.Single(n => n.Id == "N2").Leaves);
    }

    [Fact]
    public void A_policy_comes_with_the_first_patients_and_from_then_on_through_the_library()
    {
        var rule = new PolicyRule("dressing.film.max", 6, "days", new LocalDate(2027, 3, 1), PolicyLevel.Agency, RuleStanding.OwnDefault, "invented for this test");
        AgencyRoster more = DemoAgency.Roster with { Policy = DemoAgency.Roster.Policy.Add(rule) };
        AgencyRoster rewritten = DemoAgency.Roster with { Policy = [.. DemoAgency.Roster.Policy.Select(p => p with { Value = 90 })] };

        Assert.Empty(RosterChange.Between(null, more).Conflicts);
        Assert.Contains(RosterChange.Between(DemoAgency.Roster, more).Conflicts, c => c.Refusal.Code == "policy-by-library");
        Assert.Contains(RosterChange.Between(DemoAgency.Roster, rewritten).Conflicts, c => c.Refusal.Code == "policy-rewritten");
    }
}
