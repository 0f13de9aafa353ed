using System.Reflection;
using System.Xml.Linq;

namespace HomeLine.Architecture.Tests;

/// <summary>One project under src: what it says it uses, and what its compiled code really uses.</summary>
internal sealed class Room(string name)
{
    private readonly XDocument project = XDocument.Parse(Repository.Read($"src/HomeLine.{name}/HomeLine.{name}.csproj"));

    /// <summary>Short names of the rooms it references.</summary>
    public IEnumerable<string> References => Includes("ProjectReference")
        .Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')).Replace("HomeLine.", "", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    public IEnumerable<string> Packages => Includes("PackageReference").Order(StringComparer.Ordinal);

    public Assembly Assembly { get; } = Assembly.Load($"HomeLine.{name}");

    /// <summary>Assemblies the compiled code refers to, the framework's own foundations left out.</summary>
    public IEnumerable<string> AssembliesUsed => Assembly.GetReferencedAssemblies()
        .Select(reference => reference.Name!)
        .Where(reference => !reference.StartsWith("System.", StringComparison.Ordinal) && reference != "netstandard")
        .Order(StringComparer.Ordinal);

    private IEnumerable<string> Includes(string element) =>
        project.Descendants(element).Select(reference => (string)reference.Attribute("Include")!);
}
