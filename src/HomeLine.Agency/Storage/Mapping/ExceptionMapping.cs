using HomeLine.LineCare;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class ExceptionMapping : IEntityTypeConfiguration<CareException>
{
    public void Configure(EntityTypeBuilder<CareException> builder)
    {
        builder.NumberedRows("exceptions").Changeable();
        builder.HasIndex(e => new { e.Patient, e.RuleId }).IsUnique();
        builder.OfPatient(e => e.Patient);
    }
}
