/* The font file as bytes of the library (Bitstream Vera licence: it may be embedded), and how many they are. */
        .section .rodata
        .global fillside_dejavu_sans
        .hidden fillside_dejavu_sans
        .type   fillside_dejavu_sans, %object
        .balign 16
fillside_dejavu_sans:
        .incbin FILLSIDE_FONT_FILE
fillside_dejavu_sans_end:
        .size   fillside_dejavu_sans, fillside_dejavu_sans_end - fillside_dejavu_sans

        .global fillside_dejavu_sans_size
        .hidden fillside_dejavu_sans_size
        .type   fillside_dejavu_sans_size, %object
        .balign 8
fillside_dejavu_sans_size:
        .8byte  fillside_dejavu_sans_end - fillside_dejavu_sans
        .size   fillside_dejavu_sans_size, 8

        .section .note.GNU-stack, "", %progbits
