namespace HomeLine.Planning.Routing.Shifts;

/// <summary>Small random changes of a day. Each answers false, and may leave the day half changed, when it makes no sense.</summary>
internal sealed class ShiftMoves
{
    private readonly ShiftProblem _problem;
    private readonly Chance _chance;
    private readonly int[][] _near;
    private readonly bool[] _firstAble, _secondAble;
    private readonly int[] _pairs, _optional, _severalWindows;
    private readonly int[][] _visitsOf;
    private readonly bool _lunch;

    public ShiftMoves(ShiftProblem problem, Chance chance)
    {
        _problem = problem;
        _chance = chance;
        int visits = problem.Visits.Length;
        int[] all = [.. Enumerable.Range(0, visits)];
        _firstAble = Abilities(visit => visit.First);
        _secondAble = Abilities(visit => visit.Second);
        _pairs = [.. all.Where(visit => problem.Visits[visit].Second is not null)];
        _severalWindows = [.. all.Where(visit => problem.Visits[visit].Windows.Length > 1)];
        _optional = [.. Enumerable.Range(0, problem.Optional.Length).Where(patient => problem.Optional[patient])];
        _visitsOf = [.. Enumerable.Range(0, problem.Optional.Length).Select(patient => all.Where(visit => problem.Visits[visit].Patient == patient).ToArray())];
        _near = [.. all.Select(visit => all.Where(other => other != visit).OrderBy(other => Apart(visit, other)).ToArray())];
        _lunch = problem.Lunch is not null && problem.People.Any(person => person.Lunch);
    }

    public bool Apply(ShiftOrder order) => _chance.Next(40) switch
    {
        < 14 => BesideAnother(order),
        < 18 => Reassign(order),
        < 23 => Exchange(order),
        < 28 => Shift(order),
        < 31 => SwapTails(order),
        < 33 => SwapPair(order),
        < 36 => OtherWindow(order),
        < 38 => OtherLunch(order),
        _ => InOrOut(order),
    };

    /// <summary>One person goes to a visit beside another of theirs.</summary>
    private bool BesideAnother(ShiftOrder order) => BesideAnother(order, _chance.Next(order.Order.Length));

    private bool BesideAnother(ShiftOrder order, int visit)
    {
        if (order.Order.Length < 2) return false;
        int other = Near(visit);
        if (IsOut(order, visit) || IsOut(order, other)) return false;
        int person = order.Second[other] >= 0 && _chance.Next(2) == 0 ? order.Second[other] : order.First[other];
        bool asSecond = _problem.Visits[visit].Second is not null && _chance.Next(2) == 0;
        if (!Give(order, visit, asSecond, person)) return false;
        int from = order.PlaceOf(visit), to = order.PlaceOf(other);
        if (to > from) to--;
        order.Move(from, to + _chance.Next(2));
        return true;
    }

    private bool Reassign(ShiftOrder order)
    {
        int visit = _chance.Next(order.Order.Length);
        bool asSecond = _problem.Visits[visit].Second is not null && _chance.Next(2) == 0;
        var able = (asSecond ? _problem.Visits[visit].Second! : _problem.Visits[visit].First).Able;
        return Give(order, visit, asSecond, able[_chance.Next(able.Length)]);
    }

    /// <summary>Two visits change places in the order, and sometimes their people.</summary>
    private bool Exchange(ShiftOrder order)
    {
        if (order.Order.Length < 2) return false;
        int a = _chance.Next(order.Order.Length), b = Near(a), at = order.PlaceOf(a), to = order.PlaceOf(b), way = _chance.Next(3);
        if (way > 0) (order.Order[at], order.Order[to]) = (b, a);
        int firstOfA = order.First[a], firstOfB = order.First[b];
        return way == 1 || (Give(order, a, false, firstOfB) && Give(order, b, false, firstOfA));
    }

    private bool Shift(ShiftOrder order)
    {
        int visits = order.Order.Length, from = _chance.Next(visits);
        int to = Math.Clamp(from - 6 + _chance.Next(13), 0, visits - 1);
        if (to == from) return false;
        order.Move(from, to);
        return true;
    }

    /// <summary>From some place in the order on, two people make each other's visits where both can.</summary>
    private bool SwapTails(ShiftOrder order)
    {
        int people = _problem.People.Length, a = _chance.Next(people), b = _chance.Next(people);
        if (a == b) return false;
        for (int at = _chance.Next(order.Order.Length); at < order.Order.Length; at++)
        {
            int visit = order.Order[at];
            if (!Renamed(ref order.First[visit], a, b, visit, _firstAble) || !Renamed(ref order.Second[visit], a, b, visit, _secondAble)) return false;
        }

        return true;
    }

    private bool Renamed(ref int person, int a, int b, int visit, bool[] able)
    {
        if (person != a && person != b) return true;
        person = person == a ? b : a;
        return able[(visit * _problem.People.Length) + person];
    }

    /// <summary>The two people of one visit change roles.</summary>
    private bool SwapPair(ShiftOrder order)
    {
        if (_pairs.Length == 0) return Shift(order);
        int visit = _pairs[_chance.Next(_pairs.Length)], people = _problem.People.Length;
        (order.First[visit], order.Second[visit]) = (order.Second[visit], order.First[visit]);
        return _firstAble[(visit * people) + order.First[visit]] && _secondAble[(visit * people) + order.Second[visit]];
    }

    private bool OtherWindow(ShiftOrder order)
    {
        if (_severalWindows.Length == 0) return Shift(order);
        int visit = _severalWindows[_chance.Next(_severalWindows.Length)];
        order.From[visit] = (order.From[visit] + 1) % _problem.Visits[visit].Windows.Length;
        return _chance.Next(2) == 0 || BesideAnother(order, visit);
    }

    private bool OtherLunch(ShiftOrder order)
    {
        if (!_lunch) return Shift(order);
        int visit = _chance.Next(order.Order.Length);
        order.Lunch[visit] ^= order.Second[visit] >= 0 ? 1 + _chance.Next(2) : 1;
        return true;
    }

    private bool InOrOut(ShiftOrder order)
    {
        if (_optional.Length == 0) return Exchange(order);
        int patient = _optional[_chance.Next(_optional.Length)];
        order.Out[patient] = !order.Out[patient];
        if (order.Out[patient]) return true;
        foreach (int visit in _visitsOf[patient])
            if (!BesideAnother(order, visit))
                return false;
        return true;
    }

    private bool IsOut(ShiftOrder order, int visit) => order.Out[_problem.Visits[visit].Patient];

    private int Near(int visit)
    {
        double closeness = _chance.NextFraction();
        return _near[visit][(int)(closeness * closeness * (_near[visit].Length - 1))];
    }

    // The same person in both parts: the other part goes to somebody else.
    private bool Give(ShiftOrder order, int visit, bool asSecond, int person)
    {
        bool[] able = asSecond ? _secondAble : _firstAble;
        if (!able[(visit * _problem.People.Length) + person]) return false;
        int[] part = asSecond ? order.Second : order.First, rest = asSecond ? order.First : order.Second;
        part[visit] = person;
        if (rest[visit] != person) return true;
        var others = (asSecond ? _problem.Visits[visit].First : _problem.Visits[visit].Second!).Able;
        rest[visit] = others[_chance.Next(others.Length)];
        return rest[visit] != person;
    }

    private bool[] Abilities(Func<ShiftVisit, ShiftPart?> part) =>
        [.. _problem.Visits.SelectMany(visit => Enumerable.Range(0, _problem.People.Length).Select(person => part(visit) is { } asked && asked.Able.Contains(person)))];

    private double Apart(int a, int b)
    {
        ShiftVisit one = _problem.Visits[a], two = _problem.Visits[b];
        int way = Math.Min(_problem.Travel[(one.Place * _problem.Places) + two.Place], _problem.Travel[(two.Place * _problem.Places) + one.Place]);
        int gap = one.Windows.Min(window => two.Windows.Min(other => Math.Abs(window.Opens - other.Opens)));
        return way + (0.3 * Math.Max(0, gap - one.First.Duration - way));
    }
}
