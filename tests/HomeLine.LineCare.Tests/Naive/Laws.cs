using System.Collections.Immutable;
using CsCheck;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>Laws of the engine, on the same random histories the clerk is asked about.</summary>
public sealed class Laws
{
    private const int Tries = 1_500;

    /// <summary>A history and one more entry, performed by the moment of asking.</summary>
    private static readonly Gen<(History History, LineEvent Entry)> WithOneMore =
        Histories.Any.Where(history => history.Care.Events.Length > 0).Select(history =>
        {
            var entry = history.Care.Events[^1];
            var before = history.Care with { Events = history.Care.Events.RemoveAt(history.Care.Events.Length - 1) };
            return (history with { Care = before }, entry with { Voids = null });
        });

    private static string Text(CareAnswer answer) => string.Join('\n', answer.Windows.Select(window => window.ToString()))
        + string.Concat(answer.Windows.SelectMany(window => window.Because.Overrode))
        + string.Join('\n', answer.Locks) + string.Join('\n', answer.Decisions) + string.Join('\n', answer.Waived) + answer.OnHold;

    private static CareAnswer Answer(History history, PatientCare? care = null) => WhatIsDue.For(care ?? history.Care, history.Book, history.Now);

    /// <summary>The same patient with nothing read yet.</summary>
    private static PatientCare Unread(PatientCare care) => care with { Events = care.Events };

    private static PatientCare With(History history, params IEnumerable<LineEvent> entries) =>
        history.Care with { Events = [.. history.Care.Events, .. entries] };

    [Fact]
    public void Entries_told_one_by_one_give_the_answer_of_the_whole_ledger_read_at_once() =>
        Histories.Any.Sample(history =>
        {
            var told = history.Care with { Events = [] };
            _ = Answer(history, told);
            foreach (var entry in history.Care.Events)
            {
                told = told.Recording(entry);
                _ = Answer(history, told);
            }

            return Text(Answer(history, told)) == Text(Answer(history));
        }, iter: Tries);

    [Fact]
    public void Recording_leaves_the_patient_before_it_as_it_was() =>
        WithOneMore.Sample(more =>
        {
            var before = Text(Answer(more.History));
            _ = Answer(more.History, more.History.Care.Recording(more.Entry));
            return before == Text(Answer(more.History)) && before == Text(Answer(more.History, Unread(more.History.Care)));
        }, iter: Tries);

    [Fact]
    public void Asking_about_another_moment_first_changes_no_answer() =>
        Gen.Select(Histories.Any, Gen.Int[-600, 600]).Sample((history, hours) =>
        {
            var care = Unread(history.Care);
            _ = WhatIsDue.For(care, history.Book, history.Now + Duration.FromHours(hours));
            return Text(Answer(history, care)) == Text(Answer(history, Unread(history.Care)));
        }, iter: Tries);

    [Fact]
    public void The_order_of_recording_is_irrelevant() =>
        Gen.Select(Histories.Any, Gen.Int[0, 1_000]).Sample((history, turn) =>
        {
            var turned = history.Care.Events.OrderBy(entry => (entry.Id.Value.Sum(c => c * 31) ^ turn) % 17).ToImmutableArray();
            return Findings.Of(Answer(history)).Against(Findings.Of(Answer(history, history.Care with { Events = turned }))).Length == 0;
        }, iter: Tries);

    [Fact]
    public void Voiding_an_entry_restores_the_answer() =>
        WithOneMore.Sample(more =>
        {
            var strike = new LineEvent
            {
                Id = new EventId("Z"),
                Patient = more.Entry.Patient,
                Kind = LineEventKind.PhoneCall,
                Performed = more.Entry.Performed,
                RecordedAt = more.Entry.RecordedAt,
                Voids = more.Entry.Id,
            };
            var restored = Answer(more.History, With(more.History, more.Entry, strike));
            return Text(restored) == Text(Answer(more.History));
        }, iter: Tries);

    [Fact]
    public void Care_on_one_line_moves_no_clock_of_the_other() =>
        WithOneMore.Where(more => more.Entry.Line is not null).Sample(more =>
        {
            string Others(CareAnswer answer) => string.Join('\n', answer.Windows
                .Where(window => window.Line is { } line && line != more.Entry.Line && window.Order is null).Select(window => Finding.Of(window).ToString()).Order(StringComparer.Ordinal));
            return Others(Answer(more.History)) == Others(Answer(more.History, With(more.History, more.Entry)));
        }, iter: Tries);

    [Fact]
    public void An_event_moves_no_window_of_an_item_it_has_nothing_to_do_with() =>
        WithOneMore.Sample(more =>
        {
            var touched = Touches(more.Entry.Kind);
            string Untouched(CareAnswer answer) => string.Join('\n', answer.Windows.Concat(answer.Waived.Select(waived => waived.Window))
                .Where(window => !touched.Contains(window.Item)).Select(window => Finding.Of(window).ToString()).Order(StringComparer.Ordinal));
            return Untouched(Answer(more.History)) == Untouched(Answer(more.History, With(more.History, more.Entry)));
        }, iter: Tries);

    [Fact]
    public void A_stricter_rule_of_the_agency_never_moves_a_date_later()
    {
        var ids = Gen.OneOf("dressing.film.max", "connector.intermittent.max", "port.needle.max", "port.flush.max", "flush.lumen.max");
        Gen.Select(Histories.Any, ids, Gen.Int[-40, 20]).Sample((history, id, day) =>
        {
            var from = history.Now.InZone(history.Care.Zone).Date.PlusDays(day);
            var stricter = history.Book.With(new PolicyRule(id, 1, "days", from, PolicyLevel.Agency, RuleStanding.OwnDefault, "our own default"));
            var before = Answer(history).Windows.ToLookup(Key);
            return WhatIsDue.For(history.Care, stricter, history.Now).Windows.Where(after => after.Item != CareItem.CaregiverValidation).All(after =>
                before[Key(after)].All(window => after.LateFrom <= window.LateFrom));
        }, iter: Tries);
    }

    [Fact]
    public void What_is_shown_before_recording_equals_what_shows_after() =>
        WithOneMore.Sample(more =>
        {
            var shown = WhatWouldMove.If(more.History.Care, [more.Entry], more.History.Book, more.History.Now);
            var before = Answer(more.History).Windows.ToLookup(Key);
            var after = Answer(more.History, With(more.History, more.Entry)).Windows;
            var foretold = shown.Where(moved => moved.After is not null).Select(moved => moved.After!.ToString()).ToHashSet(StringComparer.Ordinal);
            var stayed = after.Where(window => !foretold.Contains(window.ToString()));
            var gone = shown.Where(moved => moved.After is null).All(moved => after.All(window => Key(window) != Key(moved.Before!)));
            return gone && foretold.IsSubsetOf(after.Select(window => window.ToString()))
                && stayed.All(window => before[Key(window)].Any(old => (old.Opens, old.LateFrom, old.Owner) == (window.Opens, window.LateFrom, window.Owner)));
        }, iter: Tries);

    private static (CareItem, string?, string?, string?, LocalDate?) Key(DueWindow window) =>
        (window.Item, window.Line?.Value, window.Lumen, window.Order, window.Standing == WindowStanding.Ordered ? window.LastDay : null);

    /// <summary>What each kind of event may move; whatever a line's end or a stay in hospital touches is everything.</summary>
    private static ImmutableArray<CareItem> Touches(LineEventKind kind) => kind switch
    {
        LineEventKind.Inserted or LineEventKind.PortAccessed or LineEventKind.PortDeaccessed or LineEventKind.Exchanged or LineEventKind.Removed
            or LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome => [.. Enum.GetValues<CareItem>()],
        LineEventKind.DressingChanged =>
            [CareItem.Dressing, CareItem.Securement, CareItem.OutsideLength, CareItem.PortNeedle, CareItem.Connector, CareItem.LumenFlush, CareItem.PortFlush, .. Looks],
        LineEventKind.SealReported => [CareItem.Dressing, CareItem.Securement, CareItem.OutsideLength, CareItem.PortNeedle, CareItem.SiteCheck],
        LineEventKind.ConnectorChanged => [CareItem.Connector, CareItem.LumenFlush, CareItem.PortFlush, .. Looks],
        LineEventKind.ConnectorCompromised => [CareItem.Connector],
        LineEventKind.SetChanged => [CareItem.Set, CareItem.NurseCheck],
        LineEventKind.Flushed or LineEventKind.BloodDrawn => [CareItem.LumenFlush, CareItem.PortFlush, .. Looks],
        LineEventKind.DoseGiven => [CareItem.LumenFlush, CareItem.PortFlush, CareItem.Set, CareItem.OrderedService, CareItem.Labs, .. Looks],
        LineEventKind.BloodCultureDrawn => [CareItem.Connector, CareItem.LumenFlush, CareItem.PortFlush, .. Looks],
        LineEventKind.LabsDrawn or LineEventKind.ServiceGiven => [CareItem.LumenFlush, CareItem.PortFlush, CareItem.Labs, CareItem.OrderedService],
        LineEventKind.LumenOccluded or LineEventKind.LumenCleared => [CareItem.Connector, CareItem.LumenFlush, CareItem.PortFlush],
        LineEventKind.Measured => [.. Looks],
        LineEventKind.SiteChecked => [CareItem.RemovalSiteCheck, .. Looks],
        LineEventKind.Recertified => [CareItem.Recertification],
        _ => [],
    };

    private static ImmutableArray<CareItem> Looks => [CareItem.SiteCheck, CareItem.NurseCheck];
}
