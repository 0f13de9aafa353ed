using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class InfusionMapping : IEntityTypeConfiguration<Infusion>
{
    public void Configure(EntityTypeBuilder<Infusion> builder)
    {
        builder.NumberedRows("infusions").Changeable();
        builder.HasIndex(i => new { i.Line, i.Lumen, i.Drug }).IsUnique();
        builder.OfPatient(i => i.Patient);
        builder.OnLine(i => i.Line);
    }
}
