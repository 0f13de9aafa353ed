using HomeLine.Agency.CheckIns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class CheckInMapping : IEntityTypeConfiguration<CheckIn>
{
    public void Configure(EntityTypeBuilder<CheckIn> builder)
    {
        builder.NumberedRows("check_ins").WrittenOnce();
        builder.HasIndex(c => c.Day);
        // The same sign sent twice counts once.
        builder.HasIndex(c => new { c.Visit, c.Nurse, c.IsOut }).IsUnique();
    }
}
