using HomeLine.LineCare.Ledger;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>The trade's table, typed off: R resets, L resets the named lumens, ? only if recorded as done, S starts, E ends, N leaves alone.
/// Columns: dressing, connector, set, needle, flush of a lumen, flush of an idle port, look at the site. Common practice, no source.</summary>
internal static class WhatResets
{
    public const int Dressing = 0, Connector = 1, Set = 2, Needle = 3, Flush = 4, PortFlush = 5, Look = 6;

    public static char Of(LineEventKind kind, int column) => Row(kind)[column];

    private static string Row(LineEventKind kind) => kind switch
    {
        LineEventKind.DressingChanged /*    */ => "R?NN??R",
        LineEventKind.DressingReinforced /* */ => "NNNNNNN",
        LineEventKind.SealReported /*       */ => "NNNNNNN",
        LineEventKind.PortAccessed /*       */ => "RRRRRRR",
        LineEventKind.PortDeaccessed /*     */ => "EEEEESR",
        LineEventKind.ConnectorChanged /*   */ => "NLNN??R",
        LineEventKind.SetChanged /*         */ => "NNLNNNN",
        LineEventKind.Flushed /*            */ => "NNNNLRR",
        LineEventKind.DoseGiven /*          */ => "NNNNLRR",
        LineEventKind.BloodDrawn /*         */ => "NNNNLRR",
        LineEventKind.BloodCultureDrawn /*  */ => "NLNNLRR",
        LineEventKind.LabsDrawn /*          */ => "NNNN??N",
        LineEventKind.ServiceGiven /*       */ => "NNNN??N",
        LineEventKind.LumenCleared /*       */ => "NNNN??N",
        LineEventKind.Inserted /*           */ => "SSSNSSS",
        LineEventKind.Measured /*           */ => "NNNNNNR",
        LineEventKind.SiteChecked /*        */ => "NNNNNNR",
        LineEventKind.Exchanged /*          */ => "EEEEEEE",
        LineEventKind.Removed /*            */ => "EEEEEEE",
        _ => "NNNNNNN",
    };
}
