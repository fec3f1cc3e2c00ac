/* The page's style and scripts as bytes of the library; made by page/bundle.cmake, found with -I. */
        .section .rodata

.macro asset name, file
        .global fillside_page_\name
        .hidden fillside_page_\name
        .type   fillside_page_\name, %object
fillside_page_\name:
        .incbin "\file"
fillside_page_\name\()_end:
        .size   fillside_page_\name, fillside_page_\name\()_end - fillside_page_\name

        .global fillside_page_\name\()_size
        .hidden fillside_page_\name\()_size
        .type   fillside_page_\name\()_size, %object
        .balign 8
fillside_page_\name\()_size:
        .8byte  fillside_page_\name\()_end - fillside_page_\name
        .size   fillside_page_\name\()_size, 8
.endm

        asset style, "page.css"
        asset style_hash, "page.css.sha256"
        asset library_style, "report.css"
        asset library_style_hash, "report.css.sha256"
        asset script, "report.js"
        asset script_hash, "report.js.sha256"
        asset room_script, "room.js"
        asset room_script_hash, "room.js.sha256"
        asset slider_style_hash, "slider.css.sha256"
        asset notices, "notices.txt"

        .section .note.GNU-stack, "", %progbits
