using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Counting;

/// <summary>Days a line was in at home, and what happened to it, over a span of days.</summary>
/// <param name="Line">The line.</param>
/// <param name="Central">Whether it counts in central-line days; a midline never does.</param>
/// <param name="Days">Line-days at home in the span.</param>
/// <param name="DwellDays">Civil days from insertion to the end of the line or of the span; empty when the insertion is unknown.</param>
/// <param name="Changes">Counted entries by kind, performed in the span.</param>
public sealed record LineCount(LineId Line, bool Central, int Days, int? DwellDays, ImmutableSortedDictionary<LineEventKind, int> Changes);

/// <summary>Line-days, dwell and event counts of one patient over a span.</summary>
/// <param name="From">First day, included.</param>
/// <param name="Through">Last day, included.</param>
/// <param name="CentralLineDays">Days on which at least one central line was in at home: two lines on one day count once.</param>
/// <param name="Lines">Each line by itself.</param>
public sealed record LineDays(LocalDate From, LocalDate Through, int CentralLineDays, ImmutableArray<LineCount> Lines)
{
    /// <summary>
    /// Counts from the ledger. At home every day counts from the placement of the line, or the first day of care, to its removal or an admission
    /// (home-infusion surveillance study, Infect Control Hosp Epidemiol 2023;44:1748-1759); whether the day of removal or admission itself counts,
    /// and whether an idle port does, is policy. A line exchanged over a wire goes on in its new record: its days are never counted twice.
    /// </summary>
    /// <param name="care">The patient.</param>
    /// <param name="from">First day, included.</param>
    /// <param name="through">Last day, included.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">Days after today are not counted.</param>
    public static LineDays Of(PatientCare care, LocalDate from, LocalDate through, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        var ledger = OrderedLedger.Read(care.Events, care.Zone, now);
        var last = LocalDate.Min(through, now.InZone(care.Zone).Date);
        var counting = new DayCounting(care, ledger, policy);
        var central = 0;
        var days = care.Lines.ToDictionary(line => line.Id, _ => 0);
        for (var day = from; day <= last; day = day.PlusDays(1))
        {
            var any = false;
            foreach (var line in care.Lines)
            {
                if (!counting.Counts(line, day)) continue;
                days[line.Id]++;
                any |= IsCounted(line.Kind);
            }

            if (any) central++;
        }

        return new LineDays(from, through, central,
        [
            .. care.Lines.Select(line => new LineCount(
                line.Id, IsCounted(line.Kind), days[line.Id], counting.Dwell(line, last), Changes(line, ledger, from, last))),
        ]);
    }

    private static bool IsCounted(LineKind kind) => kind.IsCentral() && kind != LineKind.DialysisCatheter;

    private static ImmutableSortedDictionary<LineEventKind, int> Changes(Line line, IReadOnlyList<LineEvent> ledger, LocalDate from, LocalDate last) => ledger
        .Where(entry => entry.Line == line.Id && entry.Performed is { } performed && performed.Date >= from && performed.Date <= last)
        .GroupBy(entry => entry.Kind)
        .ToImmutableSortedDictionary(group => group.Key, group => group.Count());
}
