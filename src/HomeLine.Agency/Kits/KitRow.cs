using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Kits;

/// <summary>When a thing belongs into the kit.</summary>
public enum KitWhen
{
    /// <summary>Whenever the item is done.</summary>
    Always,

    /// <summary>Chlorhexidine may be used on this patient.</summary>
    Chlorhexidine,

    /// <summary>It must not.</summary>
    NoChlorhexidine,

    /// <summary>A film, with or without an antiseptic part, lies on the site.</summary>
    Film,

    /// <summary>Gauze lies on the site.</summary>
    Gauze,

    /// <summary>Gauze lies under the film.</summary>
    GauzeUnderFilm,

    /// <summary>The line is held by an adhesive device.</summary>
    Adhesive,

    /// <summary>An injury from adhesive is on file.</summary>
    AdhesiveInjury,

    /// <summary>Younger than the age for small tubes.</summary>
    Infant,
}

/// <summary>One thing of the kit list. Common practice, no source: for the agency's clinical lead to read and replace.</summary>
/// <param name="Item">For which care.</param>
/// <param name="Thing">What to bring.</param>
/// <param name="When">On which condition.</param>
/// <param name="Each"><c>lumen</c> when one is needed for each lumen; empty for one.</param>
public sealed record KitRow(CareItem Item, string Thing, KitWhen When = KitWhen.Always, string Each = "");
