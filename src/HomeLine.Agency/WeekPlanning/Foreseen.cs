using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// The roster as it stands at a later moment if every visit promised until then is made and every clinic does what is expected.
/// What of them is recorded already is not counted twice.
/// Only for planning and for checking what was promised: none of it is ever stored, and the true windows follow from what is recorded.
/// </summary>
public static class Foreseen
{
    /// <param name="roster">The roster as it stands.</param>
    /// <param name="published">Published weeks; a visit recorded as missed, refused or not done is not foreseen.</param>
    /// <param name="now">Now: a clinic whose report is overdue is not counted on.</param>
    /// <param name="until">The later moment.</param>
    public static AgencyRoster At(AgencyRoster roster, ImmutableArray<PlannedWeek> published, Instant now, Instant until)
    {
        if (published.IsEmpty) return roster;
        var patients = roster.Patients.ToDictionary(p => p.Id);
        var notMade = roster.Events
            .Where(e => e.Kind is LineEventKind.Missed or LineEventKind.Refused or LineEventKind.NotDone && e.Performed is not null)
            .Select(e => (e.Patient, e.Performed!.Value.Date))
            .ToHashSet();
        Instant begins = published.Min(w => w.FirstDay).AtStartOfDayInZone(roster.Profile.Zone).ToInstant();
        CareDone done = CareDone.Of(roster, published.Min(w => w.FirstDay));
        var lines = new LinesNow(roster);
        IEnumerable<LineEvent> visits = published
            .SelectMany(w => w.Visits)
            .Where(v => v.Held is null && !notMade.Contains((v.Patient, v.Day)) && !done.IsSigned(v))
            .OrderBy(v => v.Day).ThenBy(v => v.Start)
            .Select(v => (Visit: v, At: v.Day.At(v.Start).InZoneLeniently(roster.Profile.Zone).ToInstant()))
            .Where(x => x.At < until)
            .SelectMany(x => Events(x.Visit, x.At, patients[x.Visit.Patient], lines))
            .Where(e => !done.Takes(e));
        IEnumerable<LineEvent> elsewhere = roster.OutsideCare.SelectMany(o => Events(o, patients[o.Patient], roster, lines, begins, now, until));
        return roster with { Events = [.. roster.Events, .. visits, .. elsewhere] };
    }

    private static IEnumerable<LineEvent> Events(WeekVisit visit, Instant at, Patient patient, LinesNow lines)
    {
        foreach (string[] key in visit.Care.Select(c => c.Key.Split('|')).Where(k => k.Length == 5))
        {
            if (!Enum.TryParse(key[1], out CareItem item)) continue;
            CareOrder? order = lines.Order(key[4]);
            LineId? line = key[2].Length > 0 ? new LineId(key[2]) : order?.Line;
            if (Kind(item, order) is not { } kind) continue;
            ImmutableArray<string> lumens = [.. key[3].Select(letter => letter.ToString())];
            yield return new LineEvent
            {
                Id = new EventId($"foreseen {visit.Id} {key[1]} {key[2]} {key[3]} {key[4]}"),
                Patient = patient.Id,
                Line = line,
                Kind = kind,
                Performed = CareMoment.Exactly(at, patient.Zone),
                RecordedAt = at,
                Dressing = item is CareItem.Dressing or CareItem.PortNeedle ? lines.NextDressing(line) : null,
                SecurementChanged = item is CareItem.Dressing,
                ConnectorsChanged = item is CareItem.Connector ? lumens : [],
                LumensUsed = kind == LineEventKind.DoseGiven ? lines.Lumens(line) : item is CareItem.Connector ? [] : lumens,
                Order = order?.Id,
            };
        }
    }

    private static IEnumerable<LineEvent> Events(OutsideCare expected, Patient patient, AgencyRoster roster, LinesNow lines, Instant begins, Instant now, Instant until)
    {
        Instant at = expected.ExpectedOn.At(new LocalTime(12, 0)).InZoneLeniently(patient.Zone).ToInstant();
        if (at < begins || at >= until || now >= expected.FallBackFrom.InZoneLeniently(roster.Profile.Zone).ToInstant()) yield break;
        foreach (Line line in roster.Lines.Where(l => l.Patient == patient.Id && (expected.Line is null || expected.Line == l.Id)))
        {
            yield return new LineEvent
            {
                Id = new EventId($"foreseen {expected.Where} {line.Id}"),
                Patient = patient.Id,
                Line = line.Id,
                Kind = LineEventKind.DressingChanged,
                Performed = CareMoment.Exactly(at, patient.Zone),
                RecordedAt = at,
                Performer = PerformerKind.Outside,
                Dressing = lines.NextDressing(line.Id),
                SecurementChanged = true,
                ConnectorsChanged = [.. line.Lumens.Select(l => l.Label)],
            };
        }
    }

    private static LineEventKind? Kind(CareItem item, CareOrder? order) => item switch
    {
        CareItem.Dressing => LineEventKind.DressingChanged,
        CareItem.Connector => LineEventKind.ConnectorChanged,
        CareItem.Set => LineEventKind.SetChanged,
        CareItem.PortNeedle => LineEventKind.PortAccessed,
        CareItem.LumenFlush or CareItem.PortFlush => LineEventKind.Flushed,
        CareItem.Labs => LineEventKind.LabsDrawn,
        CareItem.SiteCheck => LineEventKind.SiteChecked,
        CareItem.Recertification => LineEventKind.Recertified,
        CareItem.OrderedService => order?.Kind switch
        {
            OrderKind.Removal => LineEventKind.Removed,
            OrderKind.NurseDose or OrderKind.LongInfusion or OrderKind.Hydration => LineEventKind.DoseGiven,
            _ => LineEventKind.ServiceGiven,
        },
        _ => null,
    };
}
