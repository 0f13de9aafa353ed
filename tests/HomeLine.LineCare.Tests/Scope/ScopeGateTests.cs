using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Scope;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Scope;

/// <summary>Who may do what, where and when. A nurse must hold a licence where the patient is at the time of care: nurse licensure compact,
/// official explanation, looked up.</summary>
public sealed class ScopeGateTests
{
    private static readonly ScopedNurse Registered = new("Juniper", "RN", [new("PICC"), new("PORT")], [new("Marrow", null), new("Westling", Mar(10))]);
    private static readonly ScopedNurse Practical = new("Linden", "LPN", [new("PICC"), new("PORT")], [new("Marrow", null)]);

    private static string[] Why(ScopedNurse nurse, string[] skills, GuardedCare guarded = GuardedCare.None, string state = "Marrow", LocalDate? on = null, PolicyBook? policy = null, string[]? compact = null) =>
        [.. ScopeGate.WhyNot(nurse, new ScopeQuestion([.. skills], guarded, state, on ?? Mar(9), compact is null ? default : [.. compact]), policy ?? PolicyBook.Default).Select(r => r.Code)];

    [Fact]
    public void A_licence_counts_where_the_patient_is_and_through_its_last_day()
    {
        Assert.Empty(Why(Registered, ["PICC"], state: "Westling", on: Mar(10)));
        Assert.Equal([ScopeCodes.LicenceExpired], Why(Registered, ["PICC"], state: "Westling", on: Mar(11)));
        Assert.Equal([ScopeCodes.LicenceMissing], Why(Practical, ["PICC"], state: "Westling"));
    }

    [Fact]
    public void A_compact_licence_covers_the_other_states_of_the_compact_only()
    {
        var nurse = Registered with { Licences = [new("Marrow", null, Compact: true)] };

        Assert.Empty(Why(nurse, ["PICC"], state: "Westling", compact: ["Marrow", "Westling"]));
        Assert.Equal([ScopeCodes.LicenceMissing], Why(nurse, ["PICC"], state: "Farland", compact: ["Marrow", "Westling"]));
        Assert.Equal([ScopeCodes.LicenceMissing], Why(nurse, ["PICC"], state: "Westling"));
    }

    [Theory]
    [InlineData(GuardedCare.Port)]
    [InlineData(GuardedCare.FirstDose)]
    [InlineData(GuardedCare.NutritionTeaching)]
    [InlineData(GuardedCare.Assessment)]
    [InlineData(GuardedCare.Removal)]
    [InlineData(GuardedCare.NeverInterrupt)]
    [InlineData(GuardedCare.Child)]
    public void A_practical_nurse_stays_within_the_credential_whatever_skill_word_was_typed(GuardedCare guarded)
    {
        Assert.Equal([ScopeCodes.BeyondCredential], Why(Practical, ["PICC"], guarded));
        Assert.Empty(Why(Registered, ["PICC"], guarded));
    }

    [Fact]
    public void Where_the_state_lets_a_practical_nurse_do_it_policy_says_so()
    {
        var given = Picc().AgencyRule("scope.practicalnurse.port", 1, "switch", new LocalDate(2027, 1, 1));

        Assert.Empty(Why(Practical, ["PORT"], GuardedCare.Port, policy: given.Policy));
    }

    [Fact]
    public void A_skill_is_one_word_at_a_time_and_may_lapse()
    {
        Assert.Equal([ScopeCodes.SkillMissing], Why(Registered, ["PEDS"]));
        var lapsing = Registered with { Skills = [new("PICC", Mar(8))] };
        Assert.Empty(Why(lapsing, ["PICC"], on: Mar(8)));
        Assert.Equal([ScopeCodes.CompetencyLapsed], Why(lapsing, ["PICC"], on: Mar(9)));
    }

    [Fact]
    public void A_caregiver_is_validated_by_person_task_line_and_day()
    {
        var care = Picc().Line(LineKind.Midline, 1, "P1-2").Care with
        {
            Caregivers = [new CaregiverValidation(Patient, "sister", CareItem.Dressing, Mar(10), First)],
        };

        Assert.Null(CaregiverGate.WhyNot(care, "sister", CareItem.Dressing, First, Mar(10)));
        Assert.Contains("ended", CaregiverGate.WhyNot(care, "sister", CareItem.Dressing, First, Mar(11))!.Sentence, StringComparison.Ordinal);
        Assert.NotNull(CaregiverGate.WhyNot(care, "sister", CareItem.Connector, First, Mar(9)));
        Assert.NotNull(CaregiverGate.WhyNot(care, "sister", CareItem.Dressing, new LineId("P1-2"), Mar(9)));
        Assert.NotNull(CaregiverGate.WhyNot(care, "brother", CareItem.Dressing, First, Mar(9)));
    }

    private static readonly FirstDose Ready = new(
        At(Mar(9), 16).InZone(Zone), Duration.FromMinutes(150), Duration.FromMinutes(90), true, Mar(9), At(Mar(9), 15), []);

    [Fact]
    public void A_first_dose_with_everything_in_place_is_not_held_up() => Assert.Empty(FirstDoseGate.WhyNot(Ready, PolicyBook.Default));

    [Fact]
    public void A_first_dose_needs_history_kit_nurse_stay_and_drug()
    {
        static string[] Codes(FirstDose dose) => [.. FirstDoseGate.WhyNot(dose, PolicyBook.Default).Select(r => r.Code)];

        Assert.Equal([ScopeCodes.FirstDoseHistory], Codes(Ready with { AllergyHistoryTaken = false }));
        Assert.Equal([ScopeCodes.FirstDoseKit], Codes(Ready with { KitExpiresOn = null }));
        Assert.Equal([ScopeCodes.FirstDoseKitExpired], Codes(Ready with { KitExpiresOn = Mar(8) }));
        Assert.Equal([ScopeCodes.FirstDoseStay], Codes(Ready with { Stay = Duration.FromMinutes(149) }));
        Assert.Equal([ScopeCodes.FirstDoseDrug], Codes(Ready with { DrugInHomeFrom = At(Mar(9), 16, 1) }));
        Assert.Equal([ScopeCodes.BeyondCredential], Codes(Ready with
        {
            NurseReasons = ScopeGate.WhyNot(Practical, new ScopeQuestion([], GuardedCare.FirstDose, "Marrow", Mar(9)), PolicyBook.Default),
        }));
    }
}
