using HomeLine.Agency.Access;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class AuditEntryMapping : IEntityTypeConfiguration<AuditEntry>
{
    public void Configure(EntityTypeBuilder<AuditEntry> builder)
    {
        builder.ToTable("audit_entries");
        builder.WrittenOnce().HasKey(e => e.Sequence);
        builder.Property(e => e.Sequence).ValueGeneratedNever();
    }
}
