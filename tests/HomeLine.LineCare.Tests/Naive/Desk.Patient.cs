using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

internal sealed partial class Desk
{
    private void ReadPatient(List<WallChart> charts, List<LineEvent> entries)
    {
        var horizon = WallCalendar.DaysOn(_today, (int)_rules.Value("horizon", _today));
        foreach (var order in _file.Orders)
        {
            if (order.Kind is OrderKind.Interval or OrderKind.VisitFrequency) continue;
            if (order.EndsOn < _today || order.StartsOn > horizon) continue;
            var last = LastUnder(order, entries);
            if (order.Kind == OrderKind.DrugLevel && order.DoseTimes.Length == 0) _questions.Add($"{order.Line} {DecisionCodes.LevelWithoutDoseTimes}");
            if (order.Kind is OrderKind.Labs or OrderKind.DrugLevel)
            {
                if (order.EveryDays is { } every && order.Dates.Length == 0 && order.Weekdays.Length == 0) ReadWeeklyDraw(order, every, last);
                else ReadAskedDays(CareItem.Labs, order, last?.Performed!.Value.Date, horizon);
            }
            else if (!charts.Any(chart => chart.CameOut is not null && order.Line == chart.Line.Id))
            {
                ReadAskedDays(CareItem.OrderedService, order, last?.Performed!.Value.Date, horizon);
                if (order is { Kind: OrderKind.NurseDose, EveryDays: 1 } && last is not null && last.Performed!.Value.Date < _today.PlusDays(-1))
                    _questions.Add($"{order.Line} {DecisionCodes.DoseNotRecorded}");
            }
        }

        ReadPlanOfCare(entries);
        ReadValidations(charts);
        if (_file.BornOn is null) _questions.Add($" {DecisionCodes.BirthDateMissing}");
    }

    /// <summary>What was last done under an order. A routine draw that names no order counts for routine orders that were valid by then.</summary>
    private static LineEvent? LastUnder(CareOrder order, List<LineEvent> entries)
    {
        LineEvent? named = null, unnamed = null;
        foreach (var entry in entries)
        {
            if (entry.Performed is null) continue;
            if (entry.Kind is not (LineEventKind.LabsDrawn or LineEventKind.DoseGiven or LineEventKind.ServiceGiven or LineEventKind.Removed)) continue;
            if (entry.Order == order.Id) named = entry;
            else if (entry.Order is null && entry.Kind == LineEventKind.LabsDrawn) unnamed = entry;
        }

        if (order.Kind != OrderKind.Labs || unnamed is null || unnamed.Performed!.Value.Date < order.StartsOn) return named;
        return named is null || unnamed.Performed.Value.Date > named.Performed!.Value.Date ? unnamed : named;
    }

    private void ReadWeeklyDraw(CareOrder order, int every, LineEvent? draw)
    {
        if (every is < 1 or > 365)
        {
            _questions.Add($"{order.Line} {DecisionCodes.OrderIntervalOutOfRange}");
            return;
        }

        var last = WallCalendar.DaysOn(draw?.Performed!.Value.Date ?? order.StartsOn, every);
        if (draw is null && last < _today)
        {
            _found.Add(FirstContact(CareItem.Labs, order.Line?.Value, null, Nurse, null, order.Id) with { Order = order.Id });
            return;
        }

        var opens = WallCalendar.DaysOn(last, -Math.Min((int)_rules.Value("labs.early", _today), every - 1));
        if (order.EndsOn is { } ends && last > ends)
        {
            if (opens > ends) return;
            last = ends;
            opens = WallCalendar.DaysOn(last, -Math.Min((int)_rules.Value("labs.early", _today), every - 1));
        }

        _found.Add(Days(CareItem.Labs, order.Line?.Value, opens, last, Nurse, draw?.Id.Value, order.Id) with { Order = order.Id });
    }

    /// <summary>Each day of the order's life is asked in turn whether the order wants it. Of the days gone by without it only the latest is
    /// offered, and none of a daily dose.</summary>
    private void ReadAskedDays(CareItem item, CareOrder order, LocalDate? done, LocalDate horizon)
    {
        LocalDate? missed = null;
        var counted = done is { } d && d >= order.StartsOn ? d : order.StartsOn.PlusDays(-(order.EveryDays ?? 1));
        for (var day = order.StartsOn; day <= horizon && !(day > order.EndsOn); day = day.PlusDays(1))
        {
            if (!IsAsked(order, day, ref counted) || day <= done) continue;
            if (day < _today) missed = day;
            else AddAsked(item, order, day);
        }

        if (missed is { } late && order.EveryDays != 1) AddAsked(item, order, late);
    }

    private static bool IsAsked(CareOrder order, LocalDate day, ref LocalDate counted)
    {
        if (order.Dates.Length > 0) return order.Dates.Contains(day);
        if (order.Weekdays.Length > 0) return order.Weekdays.Contains(day.DayOfWeek);
        if (order.EveryDays is not (>= 1 and <= 365) || day != WallCalendar.DaysOn(counted, order.EveryDays.Value)) return false;
        counted = day;
        return true;
    }

    private void AddAsked(CareItem item, CareOrder order, LocalDate day) =>
        _found.Add(Days(item, order.Line?.Value, day, day, Nurse, null, order.Id) with { Order = order.Id, Standing = WindowStanding.Ordered });

    /// <summary>The days of care numbered 1 to 60 over and over; the assessment belongs in days 56 to 60 of each round.</summary>
    private void ReadPlanOfCare(List<LineEvent> entries)
    {
        var length = (int)_rules.Value("recertification.max", _today);
        var first = (int)_rules.Value("recertification.first", _today);
        var done = entries.LastOrDefault(entry => entry.Kind == LineEventKind.Recertified);
        int round = 0, number = 1, covered = -1, todays = 0;
        for (var day = _file.CareStartedOn; day <= _today || day <= done?.Performed?.Date; day = day.PlusDays(1))
        {
            if (done?.Performed?.Date == day) covered = number >= first ? round : round - 1;
            if (day == _today) todays = round;
            if (++number <= length) continue;
            number = 1;
            round++;
        }

        var next = Math.Max(Math.Max(covered + 1, todays - 1), 0);
        var opens = WallCalendar.DaysOn(_file.CareStartedOn, (next * length) + first - 1);
        var due = Days(CareItem.Recertification, null, opens, WallCalendar.DaysOn(opens, length - first), Nurse, done?.Id.Value, "recertification.max");
        _found.Add(AfterStay(entries) is { } sooner && sooner.LateFrom < due.LateFrom
            ? due with { Opens = sooner.Opens, Target = sooner.LateFrom, LateFrom = sooner.LateFrom, OpensOn = sooner.Day, LastDay = sooner.LastDay, Anchor = sooner.Anchor, Rule = "resumption.max" }
            : due);
    }

    /// <summary>Home after a night or more and nobody has assessed since: so many hours from the door.</summary>
    private (Instant Opens, Instant LateFrom, LocalDate Day, LocalDate LastDay, string Anchor)? AfterStay(List<LineEvent> entries)
    {
        LineEvent? went = null, back = null;
        var away = false;
        foreach (var entry in entries)
        {
            if (entry.Kind == LineEventKind.AdmittedToHospital)
            {
                if (!away) went = entry;
                (away, back) = (true, null);
            }
            else if (entry.Kind == LineEventKind.ReturnedHome)
            {
                if (!away) went = null;
                (away, back) = (false, entry);
            }
            else if (entry.Kind == LineEventKind.Recertified) back = null;
        }

        if (back is null) return null;
        if (went is not null)
        {
            var day = _wall.DayAt(Stands(went));
            var shortStay = went.Performed is { At: { } from } && back.Performed is { At: { } to }
                ? to < WallCalendar.HoursOn(from, _rules.Value("resumption.stay.min", _today))
                : (went.Performed?.Date ?? day) >= (back.Performed?.Date ?? _wall.DayAt(back.RecordedAt));
            if (shortStay) return null;
        }

        var home = Stands(back);
        var late = WallCalendar.HoursOn(home, _rules.Value("resumption.max", _today));
        return (home, late, _wall.DayAt(home), _wall.DayAt(late - Duration.Epsilon), back.Id.Value);
    }

    private void ReadValidations(List<WallChart> charts)
    {
        foreach (var paper in _file.Caregivers)
        {
            // A paper for every line is old news only when each line that is still in has a later one, or a later paper covers them all.
            var later = _file.Caregivers.Where(other => other.Person == paper.Person && other.Item == paper.Item && other.ValidThrough > paper.ValidThrough).ToList();
            var stillIn = charts.Where(chart => chart.CameOut is null).Select(chart => chart.Line.Id).ToList();
            if (later.Any(other => other.Line is null || other.Line == paper.Line)) continue;
            if (paper.Line is null && stillIn.Count > 0 && stillIn.TrueForAll(id => later.Exists(other => other.Line == id))) continue;
            if (paper.ValidThrough < _today) _questions.Add($"{paper.Line} {DecisionCodes.ValidationLapsed}");
            else
                _found.Add(Days(CareItem.CaregiverValidation, paper.Line?.Value,
                    WallCalendar.DaysOn(paper.ValidThrough, -(int)_rules.Value("validation.caregiver.early", _today)), paper.ValidThrough, Nurse, null,
                    "validation.caregiver.life"));
        }
    }
}
