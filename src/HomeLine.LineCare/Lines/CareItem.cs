namespace HomeLine.LineCare.Lines;

/// <summary>One kind of care on a line, a lumen, or the patient. Each has its own clock.</summary>
public enum CareItem
{
    /// <summary>The dressing over the exit site.</summary>
    Dressing,

    /// <summary>The adhesive securement.</summary>
    Securement,

    /// <summary>The needleless connector of one lumen.</summary>
    Connector,

    /// <summary>The administration set of one infusion.</summary>
    Set,

    /// <summary>The needle of an accessed port with its dressing, extension and connector: one event.</summary>
    PortNeedle,

    /// <summary>Flush of an idle lumen.</summary>
    LumenFlush,

    /// <summary>Flush of an idle port.</summary>
    PortFlush,

    /// <summary>Measurement of the length outside the body.</summary>
    OutsideLength,

    /// <summary>A nurse's look at the site where no dressing change brings one.</summary>
    SiteCheck,

    /// <summary>Laboratory draw by order, drug levels among them.</summary>
    Labs,

    /// <summary>The recertification assessment of the plan of care.</summary>
    Recertification,

    /// <summary>A caregiver's validation for a task.</summary>
    CaregiverValidation,

    /// <summary>A nurse's check of care that somebody not validated for it has done.</summary>
    NurseCheck,

    /// <summary>Check of the site after a line came out.</summary>
    RemovalSiteCheck,

    /// <summary>A service by order that is not a clock: a dose, a long infusion, a lesson, a removal.</summary>
    OrderedService,
}
