using HomeLine.Agency.Reports;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class ToTellMapping : IEntityTypeConfiguration<ToTell>
{
    public void Configure(EntityTypeBuilder<ToTell> builder)
    {
        builder.NumberedRows("people_to_tell").Changeable();
        builder.Property(t => t.Id).IsRequired();
        builder.HasIndex(t => t.Id).IsUnique();
        builder.Property(t => t.Person).AsJson();
        builder.Property(t => t.Tries).AsJson();
        builder.HasOne<FiledReport>().WithMany().HasForeignKey(t => t.Report).HasPrincipalKey(r => r.Id).OnDelete(DeleteBehavior.Restrict);
    }
}
