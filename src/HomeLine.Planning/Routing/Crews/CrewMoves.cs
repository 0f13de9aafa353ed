namespace HomeLine.Planning.Routing.Crews;

/// <summary>Small random changes of an order. Each answers false, and may leave the order half changed, when it makes no sense.</summary>
internal sealed class CrewMoves
{
    private readonly CrewProblem _problem;
    private readonly Chance _chance;
    private readonly CrewClock _clock;
    private readonly int[][] _near;
    private readonly bool[] _firstAble;
    private readonly bool[] _secondAble;
    private readonly int[] _pairs;

    public CrewMoves(CrewProblem problem, CrewClock clock, Chance chance)
    {
        _clock = clock;
        _problem = problem;
        _chance = chance;
        int visits = problem.Visits.Length;
        _firstAble = Abilities(visit => visit.First);
        _secondAble = Abilities(visit => visit.Second);
        _pairs = [.. Enumerable.Range(0, visits).Where(visit => problem.Visits[visit].Second is not null)];
        _near = [.. Enumerable.Range(0, visits).Select(visit => Enumerable.Range(0, visits).Where(other => other != visit).OrderBy(other => Apart(visit, other)).ToArray())];
    }

    public bool Apply(CrewOrder order) => _chance.Next(20) switch
    {
        < 5 => BesideAnother(order),
        < 10 => BestPlaceWith(order),
        < 11 => Reassign(order),
        < 14 => Exchange(order),
        < 16 => Shift(order),
        < 18 => SwapTails(order),
        _ => SwapPair(order),
    };

    /// <summary>One person goes to a visit beside another of hers.</summary>
    private bool BesideAnother(CrewOrder order)
    {
        int visits = order.Order.Length;
        if (visits < 2) return false;
        int visit = _chance.Next(visits);
        double closeness = _chance.NextFraction();
        int other = _near[visit][(int)(closeness * closeness * closeness * (visits - 1))];
        int caregiver = order.Second[other] >= 0 && _chance.Next(2) == 0 ? order.Second[other] : order.First[other];
        bool asSecond = _problem.Visits[visit].Second is not null && _chance.Next(2) == 0;
        if (!Give(order, visit, asSecond, caregiver)) return false;
        int from = order.PlaceOf(visit), to = order.PlaceOf(other);
        if (to > from) to--;
        order.Move(from, to + _chance.Next(2));
        return true;
    }

    /// <summary>One person takes over a visit where it lengthens her way and her lateness least, as far as can be told without the others.</summary>
    private bool BestPlaceWith(CrewOrder order)
    {
        int visits = order.Order.Length, visit = _chance.Next(visits);
        double closeness = _chance.NextFraction();
        int other = visits < 2 ? visit : _near[visit][(int)(closeness * closeness * (visits - 1))];
        bool asSecond = _problem.Visits[visit].Second is not null && _chance.Next(2) == 0;
        CrewPart part = asSecond ? _problem.Visits[visit].Second! : _problem.Visits[visit].First;
        int caregiver = _chance.Next(4) == 0 ? part.Able[_chance.Next(part.Able.Length)] : order.First[other];
        int from = order.PlaceOf(visit);
        (int after, int before) = Gap(order, visit, from, caregiver, part.Duration);
        if (!Give(order, visit, asSecond, caregiver)) return false;
        if (from > after && from < before) return true;
        order.Move(from, from <= after ? after : before);
        return true;
    }

    // The places in the order between which the visit would go; the one before may be -1 and the one after the length.
    private (int After, int Before) Gap(CrewOrder order, int visit, int from, int caregiver, int duration)
    {
        CrewVisit asked = _problem.Visits[visit];
        int row = caregiver * order.Order.Length, count = _clock.StopCount[caregiver], places = _problem.Places;
        int after = -1, at = 0, free = 0, bestAfter = -1, bestBefore = order.Order.Length;
        double least = double.MaxValue;
        for (int stop = 0; stop <= count; stop++)
        {
            int before = stop < count ? _clock.StopPlace[row + stop] : order.Order.Length;
            if (before == from) continue;
            CrewVisit? next = stop < count ? _problem.Visits[order.Order[before]] : null;
            int nextPlace = next?.Place ?? 0;
            int start = Math.Max(free + _problem.Travel[(at * places) + asked.Place], asked.Opens), done = start + duration + _problem.Travel[(asked.Place * places) + nextPlace];
            double worse = _problem.Travel[(at * places) + asked.Place] + _problem.Travel[(asked.Place * places) + nextPlace] - _problem.Travel[(at * places) + nextPlace]
                + Math.Max(0, start - asked.Closes) + (next is null ? 0 : Math.Max(0, done - next.Closes));
            worse *= 0.8 + (0.4 * _chance.NextFraction());
            if (worse < least) (least, bestAfter, bestBefore) = (worse, after, before);
            if (next is null) break;
            (after, at, free) = (before, next.Place, _clock.StopReady[row + stop]);
        }

        return (bestAfter, bestBefore);
    }

    private bool Reassign(CrewOrder order)
    {
        int visit = _chance.Next(order.Order.Length);
        bool asSecond = _problem.Visits[visit].Second is not null && _chance.Next(2) == 0;
        var able = (asSecond ? _problem.Visits[visit].Second! : _problem.Visits[visit].First).Able;
        return Give(order, visit, asSecond, able[_chance.Next(able.Length)]);
    }

    /// <summary>Two visits change places in the order, and their people where they can.</summary>
    private bool Exchange(CrewOrder order)
    {
        int visits = order.Order.Length;
        if (visits < 2) return false;
        int a = _chance.Next(visits);
        double closeness = _chance.NextFraction();
        int b = _near[a][(int)(closeness * closeness * (visits - 1))];
        int at = order.PlaceOf(a), to = order.PlaceOf(b);
        (order.Order[at], order.Order[to]) = (b, a);
        order.Touch(at);
        order.Touch(to);
        int firstOfA = order.First[a], firstOfB = order.First[b];
        return Give(order, a, false, firstOfB) && Give(order, b, false, firstOfA);
    }

    private bool Shift(CrewOrder order)
    {
        int visits = order.Order.Length, from = _chance.Next(visits);
        int to = Math.Clamp(from - 6 + _chance.Next(13), 0, visits - 1);
        if (to == from) return false;
        order.Move(from, to);
        return true;
    }

    /// <summary>From some place in the order on, two people make each other's visits.</summary>
    private bool SwapTails(CrewOrder order)
    {
        int a = _chance.Next(_problem.Caregivers), b = _chance.Next(_problem.Caregivers);
        if (a == b) return false;
        int from = _chance.Next(order.Order.Length);
        order.Touch(from);
        order.Touch(order.Order.Length - 1);
        for (int at = from; at < order.Order.Length; at++)
        {
            int visit = order.Order[at];
            if (!Renamed(ref order.First[visit], a, b, visit, _firstAble) || !Renamed(ref order.Second[visit], a, b, visit, _secondAble)) return false;
        }

        return true;
    }

    private bool Renamed(ref int caregiver, int a, int b, int visit, bool[] able)
    {
        if (caregiver != a && caregiver != b) return true;
        caregiver = caregiver == a ? b : a;
        return able[(visit * _problem.Caregivers) + caregiver];
    }

    /// <summary>The two people of one visit change roles.</summary>
    private bool SwapPair(CrewOrder order)
    {
        if (_pairs.Length == 0) return Shift(order);
        int visit = _pairs[_chance.Next(_pairs.Length)];
        (order.First[visit], order.Second[visit]) = (order.Second[visit], order.First[visit]);
        order.Touch(order.PlaceOf(visit));
        return _firstAble[(visit * _problem.Caregivers) + order.First[visit]] && _secondAble[(visit * _problem.Caregivers) + order.Second[visit]];
    }

    // The same person in both parts: the other part goes to somebody else.
    private bool Give(CrewOrder order, int visit, bool asSecond, int caregiver)
    {
        bool[] able = asSecond ? _secondAble : _firstAble;
        if (!able[(visit * _problem.Caregivers) + caregiver]) return false;
        int[] part = asSecond ? order.Second : order.First, rest = asSecond ? order.First : order.Second;
        part[visit] = caregiver;
        order.Touch(order.PlaceOf(visit));
        if (rest[visit] != caregiver) return true;
        var others = (asSecond ? _problem.Visits[visit].First : _problem.Visits[visit].Second!).Able;
        int other = others[_chance.Next(others.Length)];
        rest[visit] = other;
        return other != caregiver;
    }

    private bool[] Abilities(Func<CrewVisit, CrewPart?> part) =>
        [.. _problem.Visits.SelectMany(visit => Enumerable.Range(0, _problem.Caregivers).Select(caregiver => part(visit) is { } asked && asked.Able.Contains(caregiver)))];

    private double Apart(int a, int b)
    {
        CrewVisit one = _problem.Visits[a], two = _problem.Visits[b];
        int way = Math.Min(_problem.Travel[(one.Place * _problem.Places) + two.Place], _problem.Travel[(two.Place * _problem.Places) + one.Place]);
        int gap = Math.Abs(one.Opens - two.Opens) - one.First.Duration;
        return way + (0.3 * Math.Max(0, gap - way));
    }
}
