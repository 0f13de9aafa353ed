using System.Collections.Immutable;
using CsCheck;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests;

/// <summary>Laws that hold for any ledger.</summary>
public sealed class Properties
{
    private static readonly LocalDate Now = Mar(20);

    private static readonly Gen<LineEventKind> Kinds = Gen.OneOf(Enum.GetValues<LineEventKind>()
        .Where(kind => kind is not (LineEventKind.Removed or LineEventKind.Exchanged)).ToArray());

    private static readonly Gen<ImmutableArray<string>> Lumens =
        Gen.OneOf<ImmutableArray<string>>([], ["A"], ["B"], ["A", "B"]);

    private static readonly Gen<CareMoment?> Moments = Gen.Select(Gen.Int[0, 47], Gen.Int[0, (24 * 60) - 1], Gen.Int[0, 9], (day, minute, known) =>
    {
        var date = new LocalDate(2027, 2, 1).PlusDays(day);
        var at = date.AtMidnight().PlusMinutes(minute).InZoneLeniently(Zone).ToInstant();
        return (CareMoment?)(known == 0 ? null : known == 1 ? CareMoment.SometimeOn(date) : CareMoment.Exactly(at, Zone));
    });

    private static readonly Gen<LineEvent> Entries = Gen.Select(
        Kinds, Moments, Lumens, Gen.Enum<DressingKind>(), Gen.Enum<Certainty>(), Gen.Enum<PerformerKind>(), Gen.Int[0, 127],
        (kind, moment, lumens, dressing, certainty, performer, seal) => new LineEvent
        {
            Id = new EventId("?"),
            Patient = Patient,
            Line = kind is LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome ? null : First,
            Kind = kind,
            Performed = moment,
            RecordedAt = (moment?.At ?? Start(moment?.Date ?? Mar(1))) + Duration.FromHours(seal % 30),
            Dressing = dressing,
            Certainty = certainty,
            Performer = performer,
            ConnectorsChanged = lumens,
            LumensUsed = lumens,
            Seal = (SealFinding)seal,
        });

    private static readonly Gen<ImmutableArray<LineEvent>> Ledgers =
        Entries.Array[0, 14].Select(entries => entries.Select((entry, i) => entry with { Id = new EventId($"E{i:00}") }).ToImmutableArray());

    private static readonly Gen<LineKind> LineKinds = Gen.OneOf(LineKind.Picc, LineKind.Tunneled, LineKind.Midline, LineKind.Port);

    private static Given Patients(LineKind kind, ImmutableArray<LineEvent> ledger) => new Given().Line(kind, kind == LineKind.Port ? 1 : 2)
        .But(care => care with { Events = ledger, Infusions = [new Infusion(Patient, First, "A", InfusionKind.Continuous, "therapy", PerformerKind.Nurse)] });

    private static string Text(CareAnswer answer) => string.Join('\n', answer.Windows.Select(w => $"{w} {string.Join('|', w.Because.Overrode)}"))
        + string.Join('\n', answer.Locks) + string.Join('\n', answer.Decisions) + answer.OnHold;

    private static CareAnswer Answer(Given given) => given.AnswerAt(Now, 12);

    [Fact]
    public void The_same_inputs_give_the_same_answer() =>
        Gen.Select(LineKinds, Ledgers).Sample((kind, ledger) => Text(Answer(Patients(kind, ledger))) == Text(Answer(Patients(kind, ledger))));

    [Fact]
    public void The_order_of_the_ledger_in_storage_does_not_matter() =>
        Gen.Select(LineKinds, Ledgers, Gen.Int[0, 1000]).Sample((kind, ledger, turn) =>
        {
            var turned = ledger.OrderBy(entry => (entry.Id.Value.GetHashCode(StringComparison.Ordinal) * 31) ^ turn).ToImmutableArray();
            return Text(Answer(Patients(kind, ledger))) == Text(Answer(Patients(kind, turned)))
                && Text(Answer(Patients(kind, ledger))) == Text(Answer(Patients(kind, [.. ledger.Reverse()])));
        });

    [Fact]
    public void A_correction_is_as_if_the_mistake_had_never_happened() =>
        Gen.Select(LineKinds, Ledgers, Entries, Entries).Sample((kind, ledger, mistake, truth) =>
        {
            var wrong = mistake with { Id = new EventId("X1") };
            var right = truth with { Id = new EventId("X2") };
            var corrected = ledger.Add(wrong).Add(right with { Voids = wrong.Id });
            return Text(Answer(Patients(kind, corrected))) == Text(Answer(Patients(kind, ledger.Add(right))));
        });

    [Fact]
    public void A_full_change_recorded_now_makes_nothing_late_that_was_not() =>
        Gen.Select(LineKinds, Ledgers).Sample((kind, ledger) =>
        {
            var before = Patients(kind, ledger);
            var after = before.But(care => care with
            {
                Events = care.Events.Add(new LineEvent
                {
                    Id = new EventId("NOW"),
                    Patient = Patient,
                    Line = First,
                    Kind = LineEventKind.DressingChanged,
                    Performed = CareMoment.Exactly(At(Now, 12), Zone),
                    RecordedAt = At(Now, 12),
                    Dressing = DressingKind.Film,
                    ConnectorsChanged = ["A", "B"],
                    LumensUsed = ["A", "B"],
                    SecurementChanged = true,
                }),
            });
            var lateBefore = Late(Answer(before));
            return Late(Answer(after)).All(lateBefore.Contains);

            static HashSet<(CareItem, string?)> Late(CareAnswer answer) =>
                [.. answer.Windows.Where(w => w.IsLateAt(answer.AsOf)).Select(w => (w.Item, w.Lumen))];
        });

    [Fact]
    public void Every_window_opens_before_it_is_late_and_aims_inside() =>
        Gen.Select(LineKinds, Ledgers).Sample((kind, ledger) => Answer(Patients(kind, ledger)).Windows.All(w =>
            w.Opens <= w.LateFrom && w.Target <= w.LateFrom && w.OpensOn <= w.LastDay
            && w.OpensOn == w.Opens.InZone(Zone).Date
            && w.LastDay == (w.LateFrom - Duration.Epsilon).InZone(Zone).Date
            && w.Because.Sentence.Length > 0 && w.Because.RuleId.Length > 0 && w.Because.Source.Length > 0));

    [Fact]
    public void Windows_come_soonest_late_first() =>
        Gen.Select(LineKinds, Ledgers).Sample((kind, ledger) =>
        {
            var ends = Answer(Patients(kind, ledger)).Windows.Select(w => w.LateFrom).ToList();
            return ends.SequenceEqual(ends.Order());
        });

    [Fact]
    public void No_window_ends_later_than_the_strictest_rule_that_applies()
    {
        var versions = Gen.Select(Gen.Int[1, 20], Gen.Int[0, 30], (days, from) => (days, From: new LocalDate(2027, 2, 20).PlusDays(from))).Array[0, 3];
        var orders = Gen.Select(Gen.Int[1, 20], Gen.Bool).Array[0, 3];
        Gen.Select(Gen.Int[0, 20], versions, orders).Sample((changed, policies, asked) =>
        {
            var anchor = new LocalDate(2027, 2, 25).PlusDays(changed);
            var given = Picc().Dressing(anchor);
            foreach (var (days, from) in policies.DistinctBy(p => p.From)) given = given.AgencyRule("dressing.film.max", days, "days", from);
            foreach (var (days, confirmed) in asked)
                given = given.Order(AnOrder(OrderKind.Interval, $"O{days}{confirmed}") with { Item = CareItem.Dressing, EveryDays = days });

            var last = given.Window(CareItem.Dressing, Now).LastDay;

            var atAnchor = given.Policy.InForce("dressing.film.max", anchor)!.Value;
            var mayUse = asked.Select(order => (decimal)order.Item1).Append(atAnchor).Min();
            return last <= anchor.PlusDays((int)mayUse);
        });
    }

    [Fact]
    public void A_shorter_version_of_a_policy_never_makes_a_day_late_before_the_version_existed() =>
        Gen.Select(Gen.Int[1, 7], Gen.Int[0, 10]).Sample((days, from) =>
        {
            var effective = Mar(3).PlusDays(from);
            var window = Picc().Dressing(Mar(3)).AgencyRule("dressing.film.max", days, "days", effective).Window(CareItem.Dressing, Now);
            return window.LastDay >= LocalDate.Min(effective, Mar(10)) && window.LastDay <= Mar(10);
        });

    [Fact]
    public void Shifting_everything_by_whole_weeks_shifts_every_window() =>
        Gen.Int[1, 20].Sample(weeks =>
        {
            var summer = new LocalDate(2027, 5, 3);
            var first = Picc().Dressing(summer).Window(CareItem.Dressing, summer.PlusDays(1));
            var moved = Picc().Dressing(summer.PlusWeeks(weeks)).Window(CareItem.Dressing, summer.PlusDays(1).PlusWeeks(weeks));
            return moved.LastDay == first.LastDay.PlusWeeks(weeks) && moved.OpensOn == first.OpensOn.PlusWeeks(weeks);
        });

    [Fact]
    public void A_broken_seal_never_gives_more_time() =>
        Gen.Select(Gen.Int[1, 127], Gen.Int[0, 23], Gen.Int[0, 6]).Sample((finding, hour, day) =>
        {
            var given = Picc().Dressing(Mar(3), 0, 5);
            var before = given.Window(CareItem.Dressing, Now).LateFrom;
            var after = given.Seal((SealFinding)finding, Mar(4).PlusDays(day), hour).Window(CareItem.Dressing, Now);
            return after.Standing == WindowStanding.CutShort && after.LateFrom <= before && after.SealClass is >= 1 and <= 3;
        });
}
